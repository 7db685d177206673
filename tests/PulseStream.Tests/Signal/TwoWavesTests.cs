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

    // Two beats in a period of 1.2 s by count: a front of a ninth of it is that of one beat, a shorter one may be of either.
    [Theory]
    [InlineData(0.6, 0.14, true)]
    [InlineData(0.6, 0.1, false)]
    [InlineData(1.2, 0.14, false)]
    public void TwoBeatsWhoseFrontsAreThoseOfOneMayBeItsWaves(double intervalSeconds, double frontSeconds, bool areLong)
    {
        const double binRateHz = 50;
        var slopes = new double[400];
        double[] rises = [30, 60, 90, 120, 150, 180, 210, 240, 270, 300, 330];
        for (var n = 0; n < slopes.Length; n++)
        {
            slopes[n] = rises.Sum(rise => Math.Exp(-0.5 * Math.Pow(2.355 * (n - rise) / (frontSeconds * binRateHz), 2)));
        }

        var rhythm = new Rhythm(60 / intervalSeconds, 0, 0.01, intervalSeconds, intervalSeconds);
        Assert.Equal(areLong, TwoWaves.HaveLongFronts(rhythm, 1.2, slopes, rises, binRateHz));
    }
}
