using Xunit;

namespace PulseStream.Tests.Readings;

public sealed class IntervalTests
{
    // Errors of neighbouring seconds go together: eight hundred seconds are some hundred independent ones, whose share
    // scatters by two in a hundred.
    private const double LeastShare = 0.91;
    private const double MostShare = 0.995;

    [Theory]
    [InlineData(0.01)]
    [InlineData(0.05)]
    [InlineData(0.2)]
    public void TheIntervalHoldsTheTruthInAboutNineteenSecondsOfTwenty(double noisePercent)
    {
        var held = 0;
        var all = 0;
        for (var seed = 1; seed <= 40; seed++)
        {
            var finger = new Finger { Seed = seed, NoisePercent = noisePercent, PulsePerMinute = 55 + seed, BreathingPercent = 0.3 };
            foreach (var second in Heard.Of(100, finger.Samples()).Usable)
            {
                all++;
                held += second.Spo2!.Value.LowPercent <= 97 && second.Spo2.Value.HighPercent >= 97 ? 1 : 0;
            }
        }

        Assert.True(all > 800);
        Assert.InRange(held / (double)all, LeastShare, MostShare);
    }

    [Fact]
    public void TheIntervalIsNarrowOnAQuietFinger()
    {
        var widths = Heard.Of(100, new Finger().Samples()).Usable.Select(s => s.Spo2!.Value.HighPercent - s.Spo2.Value.LowPercent).Order().ToArray();
        Assert.InRange(widths[widths.Length / 2], 0.01, 0.2);
    }

    [Fact]
    public void TheIntervalIsWiderWhileSaturationFalls()
    {
        // A point each second from the twentieth on: what is read of the window lies back, and the second begins with this.
        var heard = Heard.Of(100, new Finger { Seconds = 34, Spo2 = t => 97 - Math.Max(0, t - 20) }.Samples());
        var falling = heard.Usable.Where(s => s.SecondIndex >= 26).ToArray();
        Assert.NotEmpty(falling);
        Assert.All(falling, s => Assert.InRange(97 - (s.SecondIndex - 20), s.Spo2!.Value.LowPercent, s.Spo2.Value.HighPercent));
    }
}
