using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What a window's beats are found to have behind their fronts.</summary>
public sealed class BeatFinderTests
{
    private const double BinRateHz = 50;
    private const int Length = 380;
    private static readonly double[] Even = [.. Enumerable.Range(0, 8).Select(k => 0.3 + k)];
    private static readonly double[] Uneven = [0.3, 1.3, 2.06, 3.28, 4.16, 4.84, 5.96, 6.9];
    private readonly BeatFinder finder = new(new SignalDesign(new SampleRate(BinRateHz), new SignalOptions()));

    [Fact]
    public void OneSecondWaveBehindEachBeatShows()
    {
        finder.Find(Lights(Even, (0.35, 0.4)), double.NaN);
        Assert.Equal(PairKind.SecondWave, finder.Pairs);
        Assert.True(finder.HasSecondWaves);
    }

    // A faster wave, counted by every third of its turns.
    [Fact]
    public void TwoWavesBehindEachBeatAreNotOneSecondWave()
    {
        finder.Find(Lights(Even, (0.34, 0.5), (0.67, 0.2)), double.NaN);
        Assert.Equal(PairKind.SecondWave, finder.Pairs);
        Assert.False(finder.HasSecondWaves);
    }

    // The window before may be another stream's.
    [Fact]
    public void SecondWavesThatAreKnownWithoutARhythmLeaveNothingOfTheDoubtOfTheWindowBefore()
    {
        finder.Find(Lights(Even, (0.62, 0.12)), double.NaN);
        Assert.True(finder.IsDoubtful);
        finder.Find(Lights(Uneven, (0.36, 0.5)), double.NaN, UnevenSoFar());
        Assert.True(finder.AreUneven);
        Assert.False(finder.IsDoubtful);
    }

    // As those of a heart that beats in groups do: they stay second waves, and no rate is told of them.
    [Fact]
    public void HighOnesThatKeepToTheirBeatMayBeBeats()
    {
        finder.Find(Lights(Uneven, (0.4, 0.6)), double.NaN, UnevenSoFar());
        Assert.True(finder.AreUneven);
        Assert.True(finder.IsDoubtful);
    }

    // Breathing stretches intervals by a twentieth either way (common practice). Narrow, and from the foot of the beats, what comes behind
    // each front may be a beat unless it keeps its time all the while.
    [Theory]
    [InlineData(false, "Either")]
    [InlineData(true, "SecondWave")]
    public void WhatKeepsItsTimeWhileIntervalsChangeIsNoBeat(bool keepsTime, string kind)
    {
        var before = new PairCourse();
        for (var start = 0; start < 32; start++)
        {
            finder.Find(Breathed(start, keepsTime), double.NaN, before);
            before.Delays.Take(finder.FoundPairs);
            before.Take(finder.OwnPairs, finder.AreEven);
        }

        Assert.Equal(kind, finder.Pairs.ToString());
        Assert.Equal(!keepsTime, finder.IsDoubtful);
        var rises = new double[BeatFinder.MostBeats];
        Assert.InRange(finder.AllRises.Length, 6, 9);
        Assert.InRange(finder.CopyOfEither(rises), keepsTime ? 0 : 13, keepsTime ? 0 : 16);
    }

    // Beats of 57 a minute that breathing of 15 a minute moves, each with a third of itself behind it.
    private static double[] Breathed(double start, bool keepsTime)
    {
        const double interval = 1.05;
        var lights = new double[2 * Length];
        for (var (beat, next) = (-2.0, 0.0); beat < start + 10; beat = next)
        {
            var own = interval * (1 + (0.05 * Math.Sin(Math.PI / 2 * beat)));
            next = beat + own;
            var second = beat + (0.38 * (keepsTime ? interval : own));
            for (var n = 0; n < Length; n++)
            {
                var at = start + (n / BinRateHz);
                lights[2 * n] -= Narrow(at - beat) + (0.33 * Narrow(at - second));
                lights[(2 * n) + 1] = lights[2 * n];
            }
        }

        return lights;

        static double Narrow(double seconds) => Math.Exp(-0.5 * Math.Pow(seconds / 0.05, 2));
    }

    private static PairCourse UnevenSoFar()
    {
        var known = new PairCourse();
        for (var window = 0; window < 4; window++)
        {
            known.Take(PairKind.SecondWave, isEven: false, isUneven: true);
        }

        return known;
    }

    // Bells of 0.09 s, each with others behind it.
    private static double[] Lights(double[] beats, params (double DelaySeconds, double Height)[] behind)
    {
        var lights = new double[2 * Length];
        for (var n = 0; n < Length; n++)
        {
            var blood = beats.Sum(beat => Bell((n / BinRateHz) - beat) + behind.Sum(wave => wave.Height * Bell((n / BinRateHz) - beat - wave.DelaySeconds)));
            lights[2 * n] = lights[(2 * n) + 1] = -blood;
        }

        return lights;
    }

    private static double Bell(double seconds) => Math.Exp(-0.5 * Math.Pow(seconds / 0.09, 2));
}
