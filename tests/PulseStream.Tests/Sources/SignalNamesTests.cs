using PulseStream.Sources.Signals;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class SignalNamesTests
{
    [Theory]
    [InlineData("red", "Red")]
    [InlineData("PPG_RED", "Red")]
    [InlineData("LED 660nm", "Red")]
    [InlineData("infrared", "Infrared")]
    [InlineData("Infra-Red", "Infrared")]
    [InlineData("ppg ir", "Infrared")]
    [InlineData("PPG 940 nm", "Infrared")]
    [InlineData("IR", "Infrared")]
    [InlineData("ambient light", "Ambient")]
    [InlineData("PLETH", "Pleth")]
    [InlineData("Pleth L", "Pleth")]
    [InlineData("PPG", "Pleth")]
    [InlineData("SpO2 wave", "Pleth")]
    [InlineData("accel_x", "AccelerationX")]
    [InlineData("Acc Y", "AccelerationY")]
    [InlineData("aZ", "AccelerationZ")]
    [InlineData("SpO2", null)]
    [InlineData("RESP", null)]
    [InlineData("II", null)]
    [InlineData("credit", null)]
    [InlineData("AIRFLOW", null)]
    [InlineData("ABP", null)]
    public void NamesTellWhatASignalCarries(string name, string? channel) =>
        Assert.Equal(channel, SignalNames.ChannelOf(name, "")?.ToString());

    [Theory]
    [InlineData("g", 9.80665)]
    [InlineData("mg", 0.00980665)]
    [InlineData("m/s2", 1)]
    public void UnitsOfAccelerationAreTurned(string unit, double scale) =>
        Assert.Equal(scale, SignalNames.ScaleOf(Channel.AccelerationX, unit));
}
