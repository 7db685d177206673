using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What is known of the rate where few intervals are seen.</summary>
public sealed class RhythmTests
{
    private const double BinRateHz = 50;

    // A weak early beat between each two would not be missed in so few.
    [Fact]
    public void TwoIntervalsTellNoRate()
    {
        var window = RateWindow.Of(seenTo: 395, end: 400, soundFrom: 200, averagedBins: 400);
        var rhythm = Rhythm.Of([230, 290, 350], window, BinRateHz, irregularitySoFar: 0.2);
        Assert.Equal(double.NaN, rhythm.RatePerMinute);
        Assert.Equal(0.2, rhythm.Irregularity);
        Assert.Equal(1.2, rhythm.MedianIntervalSeconds, 1e-9);
        Assert.Equal(50, Rhythm.Of([200, 260, 320, 380], window, BinRateHz, irregularitySoFar: 0.2).RatePerMinute, 1.0);
    }

    // A pause of two intervals in a rhythm that keeps time may hide a beat; where intervals are of any length it is one of them.
    [Fact]
    public void APauseHidesABeatOnlyWhereThePairsBesideItAreAsLong()
    {
        Assert.True(SpreadOf(33, 33, 33, 33, 66, 33, 33, 33, 33) > 5);
        Assert.True(SpreadOf(26, 40, 26, 66, 26, 40, 26, 40) > 5);
        Assert.InRange(SpreadOf(35, 28, 44, 31, 66, 40, 26, 39, 34), 0, 3);
    }

    private static double SpreadOf(params int[] intervals)
    {
        double[] train = [20, .. intervals.Select((_, k) => 20.0 + intervals.Take(k + 1).Sum())];
        var window = RateWindow.Of(seenTo: 395, end: 400, soundFrom: 0, averagedBins: 400);
        return Rhythm.Of(train, window, BinRateHz, irregularitySoFar: 0).RateSpreadPerMinute;
    }
}
