using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;
using Xunit;

namespace PulseStream.Tests.Sources.Wire;

/// <summary>The cable was out: how many samples are missing.</summary>
public sealed class GapTests
{
    private const double Period = 1 / Instruments.RateHz;

    [Theory]
    [InlineData(150)]
    [InlineData(256)]
    [InlineData(1000)]
    [InlineData(30_000)]
    public void ANarrowCounterAndTheClockTellTheGapTogether(int missing) => Assert.Equal(missing, MissingAfter(Instruments.Sync, missing, missing * Period));

    [Fact]
    public void ACounterTellsTheGapOfAPlayerThatIsQuick() => Assert.Equal(900, MissingAfter(Instruments.Slip, 900, 2.5, speed: 8));

    // A frame without a checksum waits for the opening of the next, which may be long in coming: its own bytes tell the gap.
    [Fact]
    public void WithoutACounterTheClockTellsTheGap() => Assert.Equal(200, MissingAfter(Instruments.Unproven, 200, 200 * Period));

    [Fact]
    public void WithoutACounterThePaceOfAPlayerTellsTheGap() => Assert.Equal(160, MissingAfter(Instruments.Unproven, 160, 160 * Period / 8, speed: 8, isPulled: true));

    // Powered over its cable, an instrument counts from 0 again.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void ACounterThatBeganAgainLeavesTheGapToTheClock(bool isWide)
    {
        var decoder = new WireDecoder(isWide ? Instruments.Slip : Instruments.Cobs);
        var layout = isWide ? Instruments.Slip : Instruments.Cobs;
        Read(decoder, layout, 5000, 200, 0, 1);
        decoder.Break();

        Read(decoder, layout, 0, 200, 7, 1);

        var last = 199 * Period;
        Assert.InRange(decoder.Tally.Missing, ((7 - last) / Period) - 3, ((7 - last) / Period) + 1);
        Assert.Equal(400, decoder.Tally.Samples);
    }

    // Same session: its first sample stays sample 0, and none is told twice.
    [Fact]
    public void AShortPullLosesNothingWhereTheCounterGoesOn() => Assert.Equal(0, MissingAfter(Instruments.Slip, 0, 0.3, isPulled: true));

    [Theory]
    [InlineData(1.008, 50.4)]
    [InlineData(0.994, 49.7)]
    public void AMinuteTellsTheInstrumentsClock(double speed, double hz)
    {
        var decoder = new WireDecoder(Instruments.Slip);

        Read(decoder, Instruments.Slip, 0, 3600, 0, speed);

        Assert.Equal(hz, decoder.Tally.ArrivalRateHz!.Value, 0.01);
    }

    [Fact]
    public void APlayerIsNoClock()
    {
        var decoder = new WireDecoder(Instruments.Slip);

        Read(decoder, Instruments.Slip, 0, 6000, 0, 1.06);

        Assert.Null(decoder.Tally.ArrivalRateHz);
    }

    private static long MissingAfter(WireLayout layout, int missing, double seconds, double speed = 1, bool isPulled = false)
    {
        var decoder = new WireDecoder(layout);
        Read(decoder, layout, 0, 1000, 0, speed);
        if (isPulled)
        {
            decoder.Break();
        }

        Read(decoder, layout, 1000 + missing, 1000, (1000 * Period / speed) + seconds, speed);
        decoder.Finish();
        Assert.Equal(2000, decoder.Tally.Samples);
        return decoder.Tally.Missing;
    }

    private static void Read(WireDecoder decoder, WireLayout layout, long first, int count, double at, double speed)
    {
        var frames = Instruments.Frames(layout, first, count);
        for (var i = 0; i < frames.Count; i++)
        {
            decoder.Read(frames[i], at + (i * Period * count / frames.Count / speed));
        }
    }
}
