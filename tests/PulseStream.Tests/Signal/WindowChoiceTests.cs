using System.Runtime.Intrinsics;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Which window is taken, and what is taken away from it as slow.</summary>
public sealed class WindowChoiceTests
{
    private const double PeriodSeconds = 1.5;
    private const double Ratio = 0.5;
    private readonly WindowRoom room = new(new(new SampleRate(50), new()));
    private SmoothedBins bins = null!;

    // Second waves half a beat later are counted as beats of 80 a minute, of which the higher edge would leave the first wave whole.
    [Fact]
    public void ASlowPulseWithTallSecondWavesIsNotTakenForAFastOne()
    {
        var taken = Take(t => (5e-5 * Math.Sin(2 * Math.PI * 0.58 * t), 1.5));
        room.Finder.Find(taken.Pairs, double.NaN);
        Assert.True(room.Finder.RepeatsWell);
        Assert.True(60 / room.Finder.IntervalSeconds > room.Design.Options.FastPulsePerMinute);
        Assert.NotEqual(SlowEdge.OfFastPulse, taken.Edge);
    }

    [Fact]
    public void ItIsBentWhereSomethingSlowDisturbsIt()
    {
        var taken = Take(Slow);
        var whole = new LoadedWindow(room).Load(bins, taken.Fit.WindowSeconds, taken.Edge);
        Assert.Equal(0, taken.Fit.Lines);
        Assert.True(Math.Abs(taken.Fit.Ratio - Ratio) < 0.5 * Math.Abs(whole.Ratio - Ratio));
        Assert.Equal(whole.PulseSize, taken.Fit.PulseSize);
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

    private static (double Light, double Mixture) Slow(double t) => (6e-5 * Math.Sin((2 * Math.PI * 0.58 * t) + (2 * Math.Sin(2 * Math.PI * 0.3 * t))), 2.5);

    private bool IsBent(Func<double, (double Light, double Mixture)> drift)
    {
        Fill(drift);
        var loaded = new LoadedWindow(room);
        var whole = loaded.Load(bins, 8, SlowEdge.OfAnyPulse);
        return loaded.TryBend(bins, whole, out _);
    }

    private TakenWindow Take(Func<double, (double Light, double Mixture)> drift)
    {
        Fill(drift);
        var taken = new TakenWindow(room);
        new WindowChoice(room, true, new(room), taken).Take(bins, 8, double.NaN);
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
            var since = t % PeriodSeconds;
            var blood = 0.01 * (Bell(since - 0.2) + (0.9 * Bell(since - 0.95)));
            var (light, mixture) = drift(t);
            bins.Push(new(n, Vector128.Create(light - blood + Noise(), (mixture * light) - (Ratio * blood) + Noise())));
            if ((n + 1) % (int)room.Design.BinRateHz == 0 && n + 1 < seconds * room.Design.BinRateHz)
            {
                bins.EndSecond();
            }
        }

        double Noise() => 1e-5 * (noise.NextDouble() - 0.5);
    }

    private static double Bell(double seconds) => Math.Exp(-0.5 * seconds * seconds / (0.09 * 0.09));
}
