using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A slow pulse beside breathing that is nearly as large and not a pure sine: its second harmonic lies on the pulse's first.</summary>
public sealed class SlowPulseTests
{
    private const double RateHz = 100;
    private const int StartSeconds = 12;
    private const double PercentTolerance = 0.4;
    private const double PulseTolerance = 1.5;
    private const double LeastShare = 0.95;

    [Theory]
    [InlineData(36, 0.29)]
    [InlineData(38, 0.25)]
    [InlineData(41, 0.31)]
    [InlineData(45, 0.3)]
    [InlineData(49, 0.33)]
    public void ASlowPulseIsReadBesideLargeBreathing(double pulsePerMinute, double breathHz)
    {
        (double Infrared, double Red) Breath(double t)
        {
            var light = 0.004 * (Math.Sin(2 * Math.PI * breathHz * t) + (0.25 * Math.Sin((4 * Math.PI * breathHz * t) + 1)));
            return (light, 0.9 * light);
        }

        var finger = new Finger { Seconds = 60, PulsePerMinute = pulsePerMinute, PerfusionPercent = 1, Movement = Breath };
        var heard = Heard.Of(RateHz, finger.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
        var rates = heard.Usable.Select(s => s.PulseRatePerMinute).OfType<double>().ToArray();
        Assert.True(rates.Count(r => Math.Abs(r - pulsePerMinute) <= PulseTolerance) >= LeastShare * rates.Length, string.Join(' ', rates.Select(r => $"{r:F1}")));
        Assert.NotEmpty(heard.Readings);
    }

    // A fall that is steeper than the front, but time enough between two beats to show that the light is high for a short time.
    [Theory]
    [InlineData(37, 0.37)]
    [InlineData(41, 0.33)]
    public void ASlowPulseWhoseSecondWaveIsTallerIsRead(double pulsePerMinute, double delaySeconds)
    {
        double Blood(double t)
        {
            var since = t % (60 / pulsePerMinute);
            return (0.7 * Bell(since - 0.15, 0.1)) + Bell(since - 0.15 - delaySeconds, 0.08);
        }

        static double Bell(double seconds, double width) => Math.Exp(-0.5 * seconds * seconds / (width * width));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 60, Blood = Blood, BreathingPercent = 0.2 }.Samples());
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.True(settled.Count(s => s.IsUsable) >= LeastShare * settled.Length, string.Join(' ', settled.Where(s => !s.IsUsable).Select(s => $"{s.SecondIndex}: {s.Unusable!.Value.Reasons}")));
        Assert.All(heard.Usable, s => Assert.InRange(s.PulseRatePerMinute ?? pulsePerMinute, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }
}
