using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Two beats in each period that may be the two waves of one.</summary>
public sealed class TwoWavesTests
{
    // Where the second wave comes half a beat behind the first, both follow each other evenly.
    [Theory]
    [InlineData(0.405, 0.01, true)]
    [InlineData(0.405, 0.2, true)]
    [InlineData(0.405, 0.5, false)]
    [InlineData(0.6, 0.01, false)]
    public void BeatsThatFollowAsSoonAsASecondWaveDoesMayBeOne(double intervalSeconds, double irregularity, bool areCounted)
    {
        var rhythm = new Rhythm(60 / intervalSeconds, 0, irregularity, intervalSeconds, intervalSeconds);
        Assert.Equal(areCounted, TwoWaves.AreCounted(rhythm, 2 * intervalSeconds));
    }
}
