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

    // A jerk and movement of the pulse's own frequencies are bent as much as the pulse is.
    [Theory]
    [InlineData(0.58, 6e-5, true)]
    [InlineData(3.1, 6e-5, false)]
    public void ItIsBentWhereSomethingSlowDisturbsIt(double hz, double size, bool isBent)
    {
        var taken = Take(t => (size * Math.Sin((2 * Math.PI * hz * t) + (2 * Math.Sin(2 * Math.PI * 0.3 * t))), 2.5));
        var loaded = new LoadedWindow(room);
        var whole = loaded.Load(bins!, taken.Fit.WindowSeconds, taken.Edge);
        Assert.Equal(isBent, taken.Fit.Lines == 0 && taken.Fit.Ratio != whole.Ratio);
        if (isBent)
        {
            Assert.True(Math.Abs(taken.Fit.Ratio - Ratio) < 0.5 * Math.Abs(whole.Ratio - Ratio));
            Assert.Equal(whole.PulseSize, taken.Fit.PulseSize);
        }
    }

    private SmoothedBins? bins;

    private TakenWindow Take(Func<double, (double Light, double Mixture)> drift)
    {
        bins = new(room.Design);
        for (var n = 0; n < 10 * room.Design.BinRateHz; n++)
        {
            var t = n / room.Design.BinRateHz;
            var since = t % PeriodSeconds;
            var blood = 0.01 * (Bell(since - 0.2) + (0.9 * Bell(since - 0.95)));
            var (light, mixture) = drift(t);
            bins.Push(new(n, Vector128.Create(light - blood, (mixture * light) - (Ratio * blood))));
        }

        var taken = new TakenWindow(room);
        new WindowChoice(room, true, new(room), taken).Take(bins, 8, double.NaN);
        return taken;
    }

    private static double Bell(double seconds) => Math.Exp(-0.5 * seconds * seconds / (0.09 * 0.09));
}
