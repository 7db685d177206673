using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What is known of the rate where few intervals are seen.</summary>
public sealed class RhythmTests
{
    private const double BinRateHz = 50;

    [Fact]
    public void TwoIntervalsOfAnIrregularHeartDoNotTellItsRate()
    {
        var window = RateWindow.Of(seenTo: 395, end: 400, soundFrom: 200, averagedBins: 400);
        double[] beats = [230, 290, 350];
        Assert.Equal(0, Rhythm.Of(beats, window, BinRateHz, irregularitySoFar: 0).RateSpreadPerMinute, 1.0);
        Assert.True(Rhythm.Of(beats, window, BinRateHz, irregularitySoFar: 0.2).RateSpreadPerMinute > 3);
    }
}
