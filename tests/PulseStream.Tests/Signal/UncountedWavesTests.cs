using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Waves behind the beats that were counted, more of them than beats have.</summary>
public sealed class UncountedWavesTests
{
    private const double BinRateHz = 50;
    private const double Seconds = 8;

    // The aortic valve closes and the end of the arteries throws the pulse back: two waves. A third one is a beat's.
    [Theory]
    [InlineData(new[] { 0.25, 0.5 }, false)]
    [InlineData(new[] { 0.2, 0.4, 0.6 }, true)]
    public void ThreeWavesBehindEachBeatAreTooMany(double[] waves, bool areIn)
    {
        double[] beats = [0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5, 7.5];
        Assert.Equal(areIn, AreIn(beats, _ => waves, 0.3));
    }

    [Fact]
    public void RipplesAreNoWaves() => Assert.False(AreIn([0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5], _ => [0.2, 0.4, 0.6], 0.1));

    // One beat with a wave too many is noise's.
    [Fact]
    public void MostBeatsHaveToShowThem() => Assert.False(AreIn([0.5, 1.5, 2.5, 3.5, 4.5, 5.5, 6.5], k => k % 2 == 0 ? [0.2, 0.4, 0.6] : [0.3], 0.3));

    // Two beats and an early one in each 1.5 s, the early one not counted: what rises behind the second is behind the first as well
    // where it is its second wave.
    [Theory]
    [InlineData(false, true)]
    [InlineData(true, false)]
    public void BothOfTwoBeatsHaveTheSameWaves(bool bothHave, bool areIn)
    {
        double[] beats = [0.4, 0.9, 1.9, 2.4, 3.4, 3.9, 4.9, 5.4, 6.4, 6.9];
        Assert.Equal(areIn, AreIn(beats, k => k % 2 == 1 || bothHave ? [0.3] : [], 0.3));
    }

    // Less than an eighth of an interval that would hold two is a rhythm's own.
    [Fact]
    public void APauseThatIsTooShortForABeatHidesNone()
    {
        double[] beats = [0.4, 1, 1.9, 2.5, 3.4, 4, 4.9, 5.5, 6.4, 7];
        Assert.False(AreIn(beats, k => k % 2 == 1 ? [0.3] : [], 0.3));
    }

    [Fact]
    public void ThreeBeatsAreTooFewToTell() => Assert.False(AreIn([1, 3, 5], _ => [0.3, 0.6, 0.9], 0.5));

    private static bool AreIn(double[] beats, Func<int, double[]> waves, double share)
    {
        var slopes = new double[(int)(Seconds * BinRateHz)];
        for (var k = 0; k < beats.Length; k++)
        {
            Add(slopes, beats[k], 1);
            foreach (var wave in waves(k))
            {
                Add(slopes, beats[k] + wave, share);
            }
        }

        return UncountedWaves.AreIn(slopes, [.. beats.Select(b => b * BinRateHz)], BinRateHz);
    }

    private static void Add(double[] slopes, double at, double height)
    {
        const double width = 0.03;
        for (var n = 0; n < slopes.Length; n++)
        {
            var x = ((n / BinRateHz) - at) / width;
            slopes[n] += height * Math.Exp(-0.5 * x * x);
        }
    }
}
