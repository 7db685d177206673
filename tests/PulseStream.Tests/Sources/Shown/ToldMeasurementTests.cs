using CsCheck;
using PulseStream.Sources.Shown;
using Xunit;

namespace PulseStream.Tests.Sources.Shown;

/// <summary>Frames put together by hand from the tables of the pulse oximeter service.</summary>
public sealed class ToldMeasurementTests
{
    [Fact]
    public void AFrameWithEverythingThatAnInstrumentUsuallySays()
    {
        Assert.True(ToldMeasurement.TryReadContinuous(Convert.FromHexString("1C61004800800120000019F0"), out var told));

        Assert.Equal((97.0, 72.0, 2.5), (told.Spo2Percent, told.PulsePerMinute, told.PerfusionPercent));
        Assert.Equal(SensorStates.LowPerfusion, told.Sensor);
        Assert.Equal(0x0180, (int)told.Measurement);
    }

    [Fact]
    public void AFrameWithoutAFinger()
    {
        Assert.True(ToldMeasurement.TryReadContinuous(Convert.FromHexString("0CFF07FF07002000 0800".Replace(" ", "", StringComparison.Ordinal)), out var told));

        Assert.True(double.IsNaN(told.Spo2Percent) && double.IsNaN(told.PulsePerMinute) && double.IsNaN(told.PerfusionPercent));
        Assert.Equal((MeasurementStates.Unavailable, SensorStates.SensorUnconnectedToUser), (told.Measurement, told.Sensor));
    }

    [Fact]
    public void FastAndSlowAveragesAreStepppedOver()
    {
        Assert.True(ToldMeasurement.TryReadContinuous(Convert.FromHexString("07" + "61004800" + "5F004700" + "60004900" + "0040"), out var told));

        Assert.Equal((97.0, 72.0, MeasurementStates.Questionable), (told.Spo2Percent, told.PulsePerMinute, told.Measurement));
    }

    [Fact]
    public void ASpotCheckHasFlagsOfItsOwn()
    {
        Assert.True(ToldMeasurement.TryReadSpotCheck(Convert.FromHexString("03C5F33C00E80703050E07090001"), out var dated));
        Assert.True(ToldMeasurement.TryReadSpotCheck(Convert.FromHexString("1C5C005800" + "200000" + "19F0"), out var weak));

        Assert.Equal((96.5, 60.0, 0x0100, SensorStates.None), (dated.Spo2Percent, dated.PulsePerMinute, (int)dated.Measurement, dated.Sensor));
        Assert.Equal((92.0, 88.0, SensorStates.LowPerfusion, 2.5), (weak.Spo2Percent, weak.PulsePerMinute, weak.Sensor, weak.PerfusionPercent));
    }

    [Fact]
    public void SpotChecksAreMeasuredByTheirOwnFlags() => Gen.Byte.Array[0, 24].Sample(frame =>
    {
        int[] bytes = [7, 2, 3, 2, 0];
        var length = frame.Length == 0 ? -1 : 5 + bytes.Where((_, bit) => (frame[0] >> bit & 1) == 1).Sum();
        return ToldMeasurement.TryReadSpotCheck(frame, out _) == (frame.Length > 0 && frame[0] < 0x20 && length == frame.Length);
    });

    [Fact]
    public void WhatIsNotExactlyAsLongAsItsFlagsSayIsDamaged() => Gen.Byte.Array[0, 24].Sample(frame =>
    {
        int[] bytes = [4, 4, 2, 3, 2];
        var length = frame.Length == 0 ? -1 : 5 + bytes.Where((_, bit) => (frame[0] >> bit & 1) == 1).Sum();
        return ToldMeasurement.TryReadContinuous(frame, out _) == (frame.Length > 0 && frame[0] < 0x20 && length == frame.Length);
    });
}
