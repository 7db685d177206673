using System.Runtime.Intrinsics;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Which window is taken, and what is taken away from it as slow.</summary>
public sealed class WindowChoiceTests
{
    private const double Ratio = 0.5;
    private readonly WindowRoom room = new(new(new SampleRate(50), new()));
    private SmoothedBins bins = null!;
    private double noiseSize = 1e-5;
    private (double From, double To) gap;
    private (double PeriodSeconds, double Height, double SecondWave, double SecondAfterSeconds) beat = (1.5, 0.01, 0.9, 0.75);

    // Second waves half a beat later are counted as beats of 80 a minute, of which the higher edge would leave the first wave whole.
    [Fact]
    public void ASlowPulseWithTallSecondWavesIsNotTakenForAFastOne()
    {
        beat.SecondWave = 0.97;
        var taken = Take(t => (5e-5 * Math.Sin(2 * Math.PI * 0.58 * t), 1.5));
        room.Finder.Find(taken.Pairs, double.NaN);
        Assert.True(room.Finder.RepeatsWell);
        Assert.True(60 / room.Finder.IntervalSeconds > room.Design.Options.FastPulsePerMinute);
        Assert.NotEqual(SlowEdge.OfFastPulse, taken.Edge);
    }

    // A pulse of 55 whose second waves are counted: taken for one of 110, it would lose half of its first wave with the drift.
    [Fact]
    public void APulseThatRepeatsSurelyKeepsItsFirstWaveThoughSecondWavesAreCounted()
    {
        beat = (1.08, 0.0048, 0.41, 0.43);
        var taken = Take(t => (0.0024 * Math.Sin(2 * Math.PI * 0.73 * t), 1.76));
        Assert.True(taken.Fit.Disagreement <= room.Design.Options.CoherentDisagreement);
        Assert.Equal(Ratio, taken.Fit.Ratio, 0.003);
    }

    // A wave as slow as breathing's harmonics can be taken away as a line; the lights' curvatures agree with it in place, and no lamp is named.
    [Fact]
    public void ASlowWaveThatLooksLikeALineIsNoLamp()
    {
        beat = (1.6, 0.0074, 0.78, 0.52);
        var taken = Take(t => (1.26e-4 * Math.Sin((2 * Math.PI * 0.86 * t) + 3.3), 0.88));
        Assert.Equal(0, taken.Fit.Lines);
        Assert.Equal(Ratio, taken.Fit.Ratio, 0.003);
    }

    // Without its line the window is better than its curvature.
    [Fact]
    public void ALineThatLeavesTheLightsAgreedIsNotGivenUpForACurvatureThatDoesNot()
    {
        beat = (1.6249, 0.00325, 0.921, 0.693);
        noiseSize = 2.12e-5;
        var taken = Take(t => (1.105e-4 * Math.Sin((2 * Math.PI * 0.8975 * t) + 2.228), 1.497));
        Assert.Equal(1, taken.Fit.Lines);
        Assert.Equal(Ratio, taken.Fit.Ratio, 0.003);
    }

    [Fact]
    public void ItIsBentWhereSomethingSlowDisturbsIt()
    {
        var taken = Take(Slow);
        var whole = new LoadedWindow(room).Load(bins, taken.Fit.WindowSeconds, taken.Edge);
        Assert.Equal(0, taken.Fit.Lines);
        Assert.True(Math.Abs(taken.Fit.Ratio - Ratio) < 0.5 * Math.Abs(whole.Ratio - Ratio));
        Assert.Equal(whole.PulseSize, taken.Fit.PulseSize);
        Assert.Equal(whole.NoiseSize, taken.Fit.NoiseSize);
    }

    // Movement of the pulse's own frequencies is bent as much as the pulse is.
    [Fact]
    public void ItIsNotBentWhereMovementDisturbsIt()
    {
        var taken = Take(t => (6e-4 * Math.Sin((2 * Math.PI * 2.1 * t) + (3 * Math.Sin(2 * Math.PI * 0.4 * t))), 1.5));
        var loaded = new LoadedWindow(room);
        var whole = loaded.Load(bins, 8, SlowEdge.OfAnyPulse);
        loaded.TryBend(bins, whole, out var bent);
        Assert.True(bent.Disagreement > room.Design.Options.CurvatureShare * whole.Disagreement);
        Assert.NotEqual(bent.Ratio, taken.Fit.Ratio);
    }

    // Most of the curvature is then the jerk's, the faster wave's or of a light that slides.
    [Fact]
    public void NeitherAJerkNorAFastWaveNorASlideIsBent()
    {
        Assert.True(IsBent(Slow));
        Assert.False(IsBent(t => (t < 9.4 ? 0 : 0.02, 1)));
        Assert.False(IsBent(t => (0.01 * Math.Sin(2 * Math.PI * 6.5 * t), 1)));
        Assert.False(IsBent(t => (0.012 * (t - 6), 1)));
    }

    // A clip that was knocked early in the window has bent all of it; its newest seconds are calm.
    [Fact]
    public void AJerkLongAgoIsSeenAsWell() => Assert.False(IsBent(t => (t < 4.6 ? 0 : 0.02, 1)));

    // Where the skin lets less red through, or less infrared, one light alone tells that the finger slides.
    [Theory]
    [InlineData(0.0012, 10)]
    [InlineData(0.012, 0.1)]
    public void ASlideInOneLightIsNotBent(double slide, double mixture) => Assert.False(IsBent(t => (slide * (t - 6), mixture)));

    // Breath moves the light by a few percent; a tall pulse's own beats by more.
    [Theory]
    [InlineData(0.004, 0.01)]
    [InlineData(0.012, 0.1)]
    public void WhatBreathOrATallPulseMovesIsBent(double slide, double height)
    {
        beat.Height = height;
        Assert.True(IsBent(t => (slide * (t - 6), 1)));
    }

    // A straight line agrees with itself: what is left of four seconds beside it are two beats.
    [Fact]
    public void AShortWindowThatIsMostlyBridgeIsNotTaken()
    {
        beat = (0.8, 0.01, 0.3, 0.3);
        Func<double, (double Light, double Mixture)> drift = t => (t < 5 ? 1e-4 * Math.Sin((2 * Math.PI * 2.1 * t) + (3 * Math.Sin(2 * Math.PI * 0.4 * t))) : 0, 1.5);
        Assert.Equal(4, Take(drift, 0.8).Fit.WindowSeconds);
        gap = (6.5, 8.4);
        Assert.True(Take(drift, 0.8).Fit.WindowSeconds > 4);
    }

    private static (double Light, double Mixture) Slow(double t) => (6e-5 * Math.Sin((2 * Math.PI * 0.58 * t) + (2 * Math.Sin(2 * Math.PI * 0.3 * t))), 2.5);

    private bool IsBent(Func<double, (double Light, double Mixture)> drift)
    {
        Fill(drift);
        var loaded = new LoadedWindow(room);
        var whole = loaded.Load(bins, 8, SlowEdge.OfAnyPulse);
        return loaded.TryBend(bins, whole, out _);
    }

    private TakenWindow Take(Func<double, (double Light, double Mixture)> drift, double intervalSeconds = double.NaN)
    {
        Fill(drift);
        var taken = new TakenWindow(room);
        new WindowChoice(room, true, new(room), taken).Take(bins, 8, intervalSeconds);
        return taken;
    }

    private void Fill(Func<double, (double Light, double Mixture)> drift)
    {
        const int seconds = 10;
        var noise = new Random(1);
        bins = new(room.Design);
        for (var n = 0; n < seconds * room.Design.BinRateHz; n++)
        {
            var t = n / room.Design.BinRateHz;
            if (t >= gap.From && t < gap.To)
            {
                continue;
            }

            var since = t % beat.PeriodSeconds;
            var blood = beat.Height * (Bell(since - 0.2) + (beat.SecondWave * Bell(since - 0.2 - beat.SecondAfterSeconds)));
            var (light, mixture) = drift(t);
            bins.Push(new(n, Vector128.Create(light - blood + Noise(), (mixture * light) - (Ratio * blood) + Noise())));
            bins.Smooth();
            if ((n + 1) % (int)room.Design.BinRateHz == 0 && n + 1 < seconds * room.Design.BinRateHz)
            {
                bins.EndSecond();
            }
        }

        double Noise() => noiseSize * (noise.NextDouble() - 0.5);
    }

    private static double Bell(double seconds) => Math.Exp(-0.5 * seconds * seconds / (0.09 * 0.09));
}
