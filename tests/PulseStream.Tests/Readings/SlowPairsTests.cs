using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Beats that come two by two more slowly than any pulse, and the two waves of slow beats.</summary>
public sealed class SlowPairsTests
{
    private const double RateHz = 100;
    private const double Seconds = 60;
    private const int FromSecond = 10;

    // Within three a minute of the mean rate, which eight seconds hold no whole number of pairs of.
    private const double Tolerance = 3;

    // Each beat takes the whole of its interval, so that full beats and early ones are unlike: only pairs are like pairs.
    [Theory]
    [InlineData(52, 0.65, 0.5)]
    [InlineData(54, 0.72, 0.5)]
    public void SlowBigeminyIsReadAndItsRateTold(double perMinute, double early, double height)
    {
        var pair = 120 / perMinute;
        double Blood(double t)
        {
            var since = (t - 0.3 + pair) % pair;
            var first = early * pair / 2;
            return since < first ? TwoBells(since / first, 0.3) : height * TwoBells((since - first) / (pair - first), 0.3);
        }

        var usable = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = Blood }.Samples()).Usable.ToArray();
        var heard = usable.Where(s => s.SecondIndex >= FromSecond).ToArray();
        Assert.True(usable[0].SecondIndex <= 8, $"first at {usable[0].SecondIndex}");
        Assert.True(heard.Length >= Seconds - FromSecond - 1, $"{heard.Length} usable");
        Assert.All(heard, s => Assert.Equal(perMinute, s.PulseRatePerMinute ?? perMinute, Tolerance));
        Assert.True(heard.Count(s => s.PulseRatePerMinute is not null) >= 0.7 * heard.Length, $"{heard.Count(s => s.PulseRatePerMinute is not null)} of {heard.Length} have a rate");
    }

    // Intervals that differ by a tenth let the window repeat badly, but fronts of a seventh of the period are not those of two beats.
    [Fact]
    public void TheTwoWavesOfSlowUnevenBeatsAreNotBothCounted()
    {
        const double perMinute = 40;
        List<double> fronts = [0.3];
        while (fronts[^1] < Seconds + 1)
        {
            var k = fronts.Count - 1;
            fronts.Add(fronts[^1] + (60 / perMinute * (1 + (0.07 * Math.Sin(2 * Math.PI * 0.35 * fronts[^1])) + (0.07 * Math.Sin(1.7 * k * k)))));
        }

        double Blood(double t)
        {
            var k = Math.Max(0, fronts.FindLastIndex(front => front <= t));
            return TwoBells(Math.Max(0, (t - fronts[k]) / (fronts[k + 1] - fronts[k])), 0.8, 0.4, 0.09);
        }

        var heard = Heard.Of(RateHz, new Finger { Seconds = Seconds, Blood = Blood }.Samples()).Usable;
        Assert.All(heard, s => Assert.Equal(perMinute, s.PulseRatePerMinute ?? perMinute, 6.0));
        Assert.Contains(heard, s => s.PulseRatePerMinute is not null);
    }

    // Two bells (Tang, Sci Rep 2020;10:13883), repeated.
    private static double TwoBells(double phase, double second, double delay = 0.36, double width = 0.11)
    {
        var volume = 0.0;
        for (var turn = -1; turn <= 1; turn++)
        {
            volume += Bell(phase - 0.2 + turn, 0.075) + (second * Bell(phase - 0.2 - delay + turn, width));
        }

        return volume;
    }

    private static double Bell(double x, double width) => Math.Exp(-0.5 * x * x / (width * width));
}
