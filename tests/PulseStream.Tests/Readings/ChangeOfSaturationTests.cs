using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Saturation that falls or rises at once on a finger that lies still: every harmonic of the pulse goes with it, and it is no movement.</summary>
public sealed class ChangeOfSaturationTests
{
    [Theory]
    [InlineData(97, 89, 20.4, 72, 0)]
    [InlineData(88, 95, 20.1, 72, 0.8)]
    [InlineData(97, 93.5, 20.7, 110, 0)]
    [InlineData(80, 76.5, 20.9, 90, 0.4)]
    public void ItIsReadThroughout(double from, double to, double atSeconds, double pulsePerMinute, double widthSeconds)
    {
        double Spo2(double t) => from + ((to - from) * (widthSeconds > 0 ? Math.Clamp((t - atSeconds) / widthSeconds, 0, 1) : t < atSeconds ? 0 : 1));
        var heard = Heard.Of(100, new Finger { Seconds = 40, PulsePerMinute = pulsePerMinute, Spo2 = Spo2 }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 12), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.InRange(s.Spo2!.Value.Percent, Math.Min(from, to) - 0.5, Math.Max(from, to) + 0.5));

        // "delay ≤ 6 s": of the second that ends six later.
        Assert.All(heard.Usable.Where(s => s.SecondIndex >= atSeconds + 5), s => Assert.Equal(to, s.Spo2!.Value.Percent, 0.5));
    }
}
