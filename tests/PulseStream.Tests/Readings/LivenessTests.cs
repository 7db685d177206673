using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Things that swing and shake in the clip and look alive in some windows.</summary>
public sealed class LivenessTests
{
    private static readonly Finger Empty = new() { Seconds = 90, PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004 };

    // A wave of a second and a third leaks into what is looked at for breathing, and drift beside it adds to that.
    [Theory]
    [InlineData(0.75, 0.42, 3.2, 1.59)]
    [InlineData(0.77, 0.09, 2.0, 0.75)]
    public void ASlowSwingBesideDriftIsNoFinger(double hz, double overtone, double phase, double ratio)
    {
        (double, double) Swing(double t)
        {
            var light = Wave(t, hz, overtone, phase, 0) * Math.Exp(-t / 70);
            return ((0.011 * light) + Drift(t), (0.011 * ratio * light) + (0.9 * Drift(t)));
        }

        Assert.InRange(Heard.Of(200, (Empty with { RateHz = 200, Movement = Swing }).Samples()).Usable.Count(), 0, 1);
    }

    // Twice as fast as any heart, and taken for beats of a half or a third of its rate.
    [Theory]
    [InlineData(50, 7.26, 0.008)]
    [InlineData(50, 6.1, 0.008)]
    [InlineData(100, 6.6, 0.008)]
    [InlineData(100, 5.7, 0.012)]
    [InlineData(250, 7.0, 0.008)]
    public void AWaveTooFastForAnyHeartIsNoPulse(double rateHz, double hz, double size)
    {
        (double, double) Swing(double t) => (size * Math.Sin(2 * Math.PI * hz * t), 0.6 * size * Math.Sin(2 * Math.PI * hz * t));
        Assert.Empty(Heard.Of(rateHz, (Empty with { RateHz = rateHz, Seconds = 30, NoisePercent = 0.01, Movement = Swing }).Samples()).Usable);
    }

    // Most of the first harmonic goes with the baseline, and what is left looks like a pulse of the second or third; a fourth
    // one is nothing that a heart alone has.
    [Theory]
    [InlineData(0.51, 0.36, 0, 0.19, 0)]
    [InlineData(0.6, 0.17, 2, 0.275, 0)]
    [InlineData(0.39, 0.5, 1, 0, 0.06)]
    [InlineData(0.47, 0.42, 2, 0.19, 0.04)]
    [InlineData(0.66, 0.06, 3, 0.09, 0.06)]
    public void ASteadySwingOfManyHarmonicsIsNoFinger(double hz, double second, double phase, double third, double fourth)
    {
        (double, double) Swing(double t)
        {
            var light = 0.01 * (Wave(t, hz, second, phase, third) + (fourth * Math.Sin((8 * Math.PI * hz * t) + (3 * phase)))) * Math.Exp(-t / 100);
            return (light + Drift(t), (1.08 * light) + (0.9 * Drift(t)));
        }

        var heard = Heard.Of(100, (Empty with { RateHz = 100, Movement = Swing }).Samples());
        Assert.Empty(heard.Readings);
        Assert.InRange(heard.Usable.Count(), 0, 4);
    }

    // Red is bent by what moves, so that the lights agree best in the shortest window: infrared was steady for longer.
    [Fact]
    public void ASwingIsKnownThoughTheLightsAgreeInAShortWindowAlone()
    {
        (double, double) Swing(double t)
        {
            var light = 0.5 * Wave(t, 2.4, 0.4, 2, 0.06) * Math.Exp(-t / 32);
            return (0.046 * light, (0.043 * light) + (0.0085 * light * light));
        }

        Assert.InRange(Heard.Of(62.5, (Empty with { RateHz = 62.5, Movement = Swing }).Samples()).Usable.Count(), 0, 2);
    }

    // Two beats of which nothing repeats have no harmonic that anyone knows.
    [Fact]
    public void WhatRepeatsNothingAndHasTooFewBeatsShowsNoLife()
    {
        var liveness = new Liveness(new());
        var few = At(ratio: 1.1, period: double.NaN, third: double.NaN, unsteady: double.NaN, noise: 0.01);
        Assert.True(liveness.IsLacking(few));
        Assert.False(liveness.IsLacking(few with { Fit = few.Fit with { WindowSeconds = 6 } }));
        Assert.False(liveness.IsLacking(At(ratio: 1.1, period: 1.7, third: double.NaN, unsteady: double.NaN, noise: 0.01)));
        liveness.Remember(At(ratio: 1.1, period: 1.7, third: double.NaN, unsteady: 0.3, noise: 0.01));
        Assert.False(liveness.IsShown);
    }

    // What was steady while it was large is not alive when noise leaves that open; another wave is asked nothing.
    [Fact]
    public void AWaveThatWasSeenToSwingIsAskedForLifeWhereAWindowLeavesItOpen()
    {
        var liveness = new Liveness(new());
        var open = At(ratio: 1.1, period: 0.7, third: 0.19, unsteady: 0.2, noise: 0.21);
        Assert.False(liveness.IsLacking(open));
        liveness.See(At(ratio: 1.1, period: 0.7, third: 0.19, unsteady: 0.01, noise: 0.005), hasForm: true);
        Assert.True(liveness.IsLacking(open));
        Assert.False(liveness.IsLacking(At(ratio: 0.9, period: 0.7, third: 0.19, unsteady: 0.2, noise: 0.21)));
        Assert.False(liveness.IsLacking(At(ratio: 1.1, period: 0.9, third: 0.19, unsteady: 0.2, noise: 0.21)));
        var alive = At(ratio: 1.1, period: 0.7, third: 0.19, unsteady: 0.2, noise: 0.05);
        Assert.False(liveness.IsLacking(alive));
        liveness.See(alive, hasForm: true);
        Assert.False(liveness.IsLacking(open));
    }

    // A push bends one beat of it, and makes it look alive for some windows.
    [Fact]
    public void WhatWasSeenToSwingForSecondsIsNotAliveForOne()
    {
        var liveness = new Liveness(new());
        var swing = At(ratio: 1.1, period: 0.7, third: 0.19, unsteady: 0.01, noise: 0.005);
        liveness.See(swing, hasForm: true);
        liveness.See(swing, hasForm: true);
        var alive = At(ratio: 1.1, period: 0.7, third: 0.19, unsteady: 0.2, noise: 0.05);
        Assert.True(liveness.IsLacking(alive));
        liveness.See(alive, hasForm: true);
        Assert.False(liveness.IsLacking(alive));
    }

    // A toy that is tapped without end is never steady, has harmonics enough, and no front; one tap gives it one for two windows.
    // A pulse whose second wave blunts it is up for a shorter time than down.
    [Theory]
    [InlineData(0.05, false, true)]
    [InlineData(0.05, true, false)]
    [InlineData(0.35, false, false)]
    public void WhatWasEvenlyUpAndDownForSecondsIsNotAliveWhenItHasAFront(double crest, bool hasForm, bool isLacking)
    {
        var liveness = new Liveness(new());
        var even = At(ratio: 1.1, period: 0.42, third: 0.1, unsteady: 0.5, noise: 0.05);
        liveness.See(even with { Pulse = even.Pulse with { Crest = crest } }, hasForm);
        liveness.See(even with { Pulse = even.Pulse with { Crest = -crest } }, hasForm);
        Assert.Equal(isLacking, liveness.IsLacking(even));
    }

    // What moves the lights apart is no swing of one thing.
    [Fact]
    public void MovementIsNotRememberedAsASwing()
    {
        var liveness = new Liveness(new());
        liveness.See(At(ratio: 1.1, period: 0.7, third: 0.19, unsteady: 0.01, noise: 0.005, disagreement: 0.05), hasForm: true);
        Assert.False(liveness.IsLacking(At(ratio: 1.1, period: 0.7, third: 0.19, unsteady: 0.2, noise: 0.21)));
    }

    // All that three harmonics leave of a slow wave may be noise; of a quicker one its own fast harmonics are taken for noise.
    [Theory]
    [InlineData(1.06, 0.12, true)]
    [InlineData(0.6, 0.12, false)]
    [InlineData(1.06, 0.18, false)]
    public void ASlowWaveOfWhichNoiseAloneIsLeftIsASwing(double period, double noise, bool isLacking) =>
        Assert.Equal(isLacking, new Liveness(new()).IsLacking(At(1.1, period, third: 0.19, unsteady: noise, noise)));

    // Of a fast pulse the smoothing takes some of its third harmonic away; two harmonics alone show none.
    [Theory]
    [InlineData(0.34, 0.015, false)]
    [InlineData(0.34, 0.008, true)]
    [InlineData(0.6, 0.015, true)]
    public void AnEvenWaveWithAFrontIsAskedForAThirdHarmonic(double period, double third, bool isLacking) =>
        Assert.Equal(isLacking, new Liveness(new()).IsLacking(At(1.1, period, third, unsteady: 0.03, noise: 0.005)));

    // What shakes fast has its beats found at a part of its rate, where it has next to no first harmonic; a slow pulse's may
    // have gone with a line.
    [Theory]
    [InlineData(0.4, 0, true)]
    [InlineData(3, 0, false)]
    [InlineData(3, 1, true)]
    public void MoreOfAThirdHarmonicThanOfTheFirstIsNoSignOfLife(double third, int lines, bool isShown)
    {
        var liveness = new Liveness(new());
        for (var k = 0; k < new LivenessOptions().ProvingLifeSeconds; k++)
        {
            Assert.False(liveness.IsShown);
            liveness.Remember(At(ratio: 1.1, period: 0.7, third, unsteady: 0.4, noise: 0.1, lines: lines));
        }

        Assert.Equal(isShown, liveness.IsShown);
    }

    // A wave of half a hertz leaks all of itself into what is looked at for breathing; a slow one that is steady has its own
    // first harmonic there.
    [Theory]
    [InlineData(1.7, 0.04, false)]
    [InlineData(1.3, 0.04, true)]
    [InlineData(1.3, 0.01, false)]
    [InlineData(0.8, 0.01, true)]
    public void NothingIsSeenToBreatheBesideAWaveAsSlowAsBreath(double period, double unsteady, bool isShown)
    {
        var liveness = new Liveness(new());
        var second = At(ratio: 1.1, period, third: 0.01, unsteady, noise: 0.005);
        for (var k = 0; k < new LivenessOptions().ProvingBreathSeconds; k++)
        {
            liveness.Remember(second with { Pulse = second.Pulse with { BreathingShare = 0.5 } });
        }

        Assert.Equal(isShown, liveness.IsShown);
    }

    // Blades that pass the light: narrow peaks of as many harmonics as a pulse has, alike before and behind, at a speed that wanders
    // by a hundredth.
    [Theory]
    [InlineData(1.3, 2)]
    [InlineData(2.1, 2)]
    [InlineData(2.8, 3)]
    [InlineData(1.7, 5)]
    public void AFanIsNoFinger(double hz, double narrowness)
    {
        (double, double) Fan(double t)
        {
            var turn = 2 * Math.PI * hz * (t + (0.02 * Math.Sin(0.5 * t)) + (0.01 * Math.Sin((0.31 * t) + 1)));
            var light = 0.02 * Math.Exp(narrowness * (Math.Cos(turn) - 1));
            return (light, 0.8 * light);
        }

        var heard = Heard.Of(100, (Empty with { RateHz = 100, Movement = Fan }).Samples());
        Assert.Empty(heard.Readings);
        Assert.InRange(heard.Usable.Count(), 0, 3);
    }

    // A heart's beats jitter by a hundredth; with a front and a back alike, next to no breath and a third harmonic of a tenth that
    // jitter is all that tells it from a blade.
    [Theory]
    [InlineData(75)]
    [InlineData(120)]
    public void ARoundPulseThatJittersIsRead(double pulsePerMinute)
    {
        var jitter = new Random(3);
        var heart = Heart.Of(45, (_, _) => 60 / pulsePerMinute * (1 + (0.03 * (jitter.NextDouble() - 0.5) * Math.Sqrt(3))));
        double Blood(double t)
        {
            var k = Array.FindLastIndex(heart.Fronts, f => f <= t);
            var turn = k < 0 ? 0 : 2 * Math.PI * (t - heart.Fronts[k]) / (heart.Fronts[k + 1] - heart.Fronts[k]);
            return Math.Exp(2 * (Math.Cos(turn) - 1));
        }

        var heard = Heard.Of(100, new Finger { Seconds = 40, Blood = Blood, BreathingPercent = 0.05 }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 12), s => Assert.True(s.IsUsable));
    }

    // Where it is pushed anew a swing has a bent beat, and in windows that hold it a third harmonic at a rate that is not steady.
    [Theory]
    [InlineData(1.65, 10.4)]
    [InlineData(1.54, 14.3)]
    [InlineData(1.88, 14.6)]
    public void ASwingThatIsPushedAnewIsNoFinger(double hz, double pushed)
    {
        (double, double) Swing(double t)
        {
            var since = t < pushed ? t : t - pushed;
            var light = 0.01 * Math.Exp(-since / 15) * Wave(t < pushed ? t : t - pushed + 0.2, hz, 0.1, 1, 0);
            return (light, 0.8 * light);
        }

        var heard = Heard.Of(100, (Empty with { RateHz = 100, Movement = Swing }).Samples());
        Assert.Empty(heard.Readings);
    }

    // A hand that swings evenly before its pulse was ever seen is a finger all the same once it is still.
    [Fact]
    public void AFingerThatSwungIsReadWhenItIsStill()
    {
        static (double, double) Swing(double t)
        {
            var light = t < 25 ? 0.05 * Wave(t, 1.9, 0.2, 1, 0) : 0;
            return (light, 0.9 * light);
        }

        var heard = Heard.Of(100, new Finger { Seconds = 50, Movement = Swing }.Samples());
        Assert.DoesNotContain(heard.Usable, s => s.SecondIndex < 24);
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 30), s => Assert.True(s.IsUsable));
    }

    private static double Wave(double t, double hz, double second, double phase, double third)
    {
        var turn = 2 * Math.PI * hz * t;
        return Math.Sin(turn) + (second * Math.Sin((2 * turn) + phase)) + (third * Math.Sin((3 * turn) + (2 * phase)));
    }

    private static SignalSecond At(double ratio, double period, double third, double unsteady, double noise, int lines = 0, double disagreement = 0)
    {
        const double size = 0.003;
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var error = noise * Math.Sqrt((1 + (ratio * ratio)) / (8 * new LivenessOptions().FreedomPerSecond));
        var fit = new RatioFit(8, ratio, error, disagreement, size, noise * size, false, 0, lines, false, 0, default);
        var pulse = new WindowPulse(9, 60 / period, 0, 0.01, 0.97, period, 0.99, 1, 0.5, third, 0.03, unsteady, 2, 1.5 / period);
        return new(10, light, fit, pulse, false);
    }

    private static double Drift(double t) => 0.002 * (Math.Sin(0.19 * t) + Math.Sin((0.27 * t) + 1));
}
