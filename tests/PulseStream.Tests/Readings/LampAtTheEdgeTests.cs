using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A lamp that flickers, folded by the sample rate, as fast as what is smoothed away: half of it passes for white noise.</summary>
public sealed class LampAtTheEdgeTests
{
    // Lamp and pulse are as large as each other; the lamp's mixture would make 84 % of it.
    private const double Lamp = 0.01;
    private const double LampRatio = 1.6;

    [Theory]
    [InlineData(100, 8.6)]
    [InlineData(100, 9.03)]
    [InlineData(100, 9.6)]
    [InlineData(25, 7.1)]
    [InlineData(250, 9.03)]
    [InlineData(31.25, 7.8, 0.56)]
    public void ALampThatPassesForNoiseIsTakenAway(double rateHz, double lampHz, double size = 1)
    {
        var finger = new Finger
        {
            RateHz = rateHz,
            Seconds = 40,
            PulsePerMinute = 67,
            Movement = t => (size * Lamp * Math.Sin(2 * Math.PI * lampHz * t), LampRatio * size * Lamp * Math.Sin(2 * Math.PI * lampHz * t)),
        };
        var heard = Heard.Of(rateHz, finger.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 15), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, 0.6));
    }
}
