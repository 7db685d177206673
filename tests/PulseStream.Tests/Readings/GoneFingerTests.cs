using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A finger that leaves, what flickers where it was, and how soon it is read again.</summary>
public sealed class GoneFingerTests
{
    private const double RateHz = 100;
    private const double PercentTolerance = 0.5;

    // Light of the emitters that a mains lamp modulates, or that swings in an empty clip.
    [Theory]
    [InlineData(-1.9, -2.5, 2.6, 0.028, Reasons.NoFinger | Reasons.Misplaced)]
    [InlineData(0.35, 0.5, 1.7, 0.02, Reasons.NoFinger | Reasons.Misplaced)]
    [InlineData(0.35, 0.5, 7.9, 0.004, Reasons.NoFinger)]
    public void LightThatFlickersWhereTheFingerWasIsNoFinger(double infrared, double red, double hz, double swing, Reasons reasons)
    {
        var empty = new Finger { Seconds = 40, PerfusionPercent = 0, BreathingPercent = 0, Movement = t => Flicker(t) };
        var heard = Heard.Of(RateHz, Between(20, 35, empty));

        // For as long as the window holds the leap, light of nearly the same counts may be a lamp's as well.
        Assert.All(Enumerable.Range(21, 14), second => Assert.Equal(reasons, heard.ReasonsAt(second) & ~(second < 28 ? Reasons.AmbientLight : Reasons.None)));
        Assert.Equal(2, heard.Sittings.Count());

        (double, double) Flicker(double t) => (infrared + (swing * Math.Sin(2 * Math.PI * hz * t)), red + (1.2 * swing * Math.Sin(2 * Math.PI * hz * t)));
    }

    // A recording of infrared alone has no red that could have brightened as well.
    [Theory]
    [InlineData(0.5, 1.7, 0.01, Reasons.NoFinger | Reasons.Misplaced)]
    [InlineData(0.5, 7.9, 0.004, Reasons.NoFinger)]
    [InlineData(-2, 1.7, 0.01, Reasons.NoFinger | Reasons.Misplaced)]
    public void OneLightThatFlickersWhereTheFingerWasIsNoFinger(double infrared, double hz, double swing, Reasons reasons)
    {
        var empty = new Finger { Seconds = 40, PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (infrared + (swing * Math.Sin(2 * Math.PI * hz * t)), 0) };
        var heard = Heard.Of(RateHz, Between(20, 35, empty), SampleColumns.Infrared);
        Assert.All(Enumerable.Range(22, 13), second => Assert.Equal(reasons, heard.ReasonsAt(second)));
        Assert.Equal(2, heard.Sittings.Count());
    }

    // Half off and moving, a finger is still there: so short a time ends no sitting.
    [Fact]
    public void AFingerHalfOffForSomeSecondsHasNotLeft()
    {
        var half = new Finger { Seconds = 40, PerfusionPercent = 0.3, Movement = t => (0.4 + (0.02 * Math.Sin(2 * Math.PI * 1.7 * t)), 0.5 + (0.01 * Math.Sin(2 * Math.PI * 2.3 * t))) };
        var heard = Heard.Of(RateHz, Between(20, 25, half));
        Assert.Contains(Enumerable.Range(21, 4), second => heard.ReasonsAt(second).HasFlag(Reasons.NoFinger));
        Assert.Single(heard.Sittings);
    }

    // Where it was, light flickered, which is not the stillness of air; it comes back in another light than it had.
    [Theory]
    [InlineData(0.5, 0.12)]
    [InlineData(-2.2, 0.14)]
    public void AFingerThatComesBackBrighterFromFlickeringLightIsReadAgain(double away, double brighter)
    {
        var finger = new Finger { Seconds = 60, BreathingPercent = 1 };
        var flickering = (finger with { PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (away + Flicker(t), away + Flicker(t)) }).Samples();
        var back = (finger with { Movement = _ => (brighter, brighter - 0.03) }).Samples();
        var heard = Heard.Of(RateHz, [.. Between(20, 35, finger, flickering)[..3500], .. back[3500..]]);
        Assert.DoesNotContain(heard.Usable, s => s.SecondIndex is >= 21 and < 35);
        Assert.All(Enumerable.Range(43, 17), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));

        static double Flicker(double t) => (0.012 * Math.Sin(2 * Math.PI * 1.7 * t)) + (0.01 * Math.Sin(2 * Math.PI * 4.3 * t));
    }

    // A room that grows lighter or flickers is not still either, but it has no pulse: six seconds of it are enough.
    [Theory]
    [InlineData(0.7, 0.002, 0.4)]
    [InlineData(0.7, 0.004, 3.1)]
    [InlineData(-2.6, 0.002, 0.4)]
    public void AFingerPutBackAfterSomeSecondsOfUneasyAirIsReadAgain(double away, double swing, double hz)
    {
        var finger = new Finger { Seconds = 60, PerfusionPercent = 4, BreathingPercent = 1, NoisePercent = 0.001 };
        var air = (finger with { PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (away + Uneasy(t), away + Uneasy(t)) }).Samples();
        var back = (finger with { Movement = _ => (0.1, -0.17) }).Samples();
        var heard = Heard.Of(RateHz, [.. Between(20, 26, finger, air)[..2600], .. back[2600..]]);
        Assert.DoesNotContain(heard.Usable, s => s.SecondIndex is >= 21 and < 26);
        Assert.All(Enumerable.Range(35, 25), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));
        Assert.Contains(heard.Readings, r => r.SecondIndex > 26);

        double Uneasy(double t) => swing * Math.Sin(2 * Math.PI * hz * t);
    }

    // A finger may take little of the light; without it there is no pulse. Put back otherwise, it sits in a light of its own.
    [Theory]
    [InlineData(0.19, 0.28)]
    [InlineData(0.08, -0.1)]
    public void LightThatChangesLittleButLosesItsPulseIsNoFinger(double infrared, double red)
    {
        var finger = new Finger { Seconds = 60, BreathingPercent = 0.2 };
        var air = (finger with { PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (infrared + Flicker(t), red + Flicker(t)) }).Samples();
        var back = (finger with { Movement = _ => (0.12, 0.07) }).Samples();
        var heard = Heard.Of(RateHz, [.. Between(20, 35, finger, air)[..3500], .. back[3500..]]);
        Assert.All(Enumerable.Range(23, 12), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.NoFinger)));
        Assert.All(Enumerable.Range(43, 17), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));

        static double Flicker(double t) => 0.001 * Math.Sin(2 * Math.PI * 6.3 * t);
    }

    // The air flickers by less than a pulse and by more than stillness; the finger that comes lets far more light through than before.
    [Fact]
    public void AnotherFingerInAnotherLightIsReadAfterAirThatFlickers()
    {
        var finger = new Finger { Seconds = 60, BreathingPercent = 0.2 };
        var air = (finger with { PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (0.9 + Flicker(t), 0.8 + Flicker(t)) }).Samples();
        var back = (finger with { Movement = _ => (0.4, 0.35) }).Samples();
        var heard = Heard.Of(RateHz, [.. Between(20, 35, finger, air)[..3500], .. back[3500..]]);
        Assert.All(Enumerable.Range(43, 17), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));

        static double Flicker(double t) => 0.0017 * Math.Sin(2 * Math.PI * 3.1 * t);
    }

    // Half off for a while with a pulse, then out into light that flickers where it was.
    [Fact]
    public void AFingerThatWasHalfOffMayHaveLeftOnceItsPulseIsNotSeenAnyMore()
    {
        var air = new Finger { Seconds = 60, PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (0.586 + Flicker(t), 0.394 + Flicker(t)) }.Samples();
        var heard = Heard.Of(RateHz, [.. WithLeak(0.586, 0.394)[..3600], .. air[3600..]]);
        Assert.All(Enumerable.Range(31, 4), second => Assert.False(heard.ReasonsAt(second).HasFlag(Reasons.NoFinger)));
        Assert.All(Enumerable.Range(46, 14), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.NoFinger)));

        static double Flicker(double t) => 0.0017 * Math.Sin(2 * Math.PI * 3.1 * t);
    }

    // What drifts in the empty clip is as large as the pulse was, and still for a second now and then.
    [Fact]
    public void AFingerPutBackAfterAirThatIsStillNowAndThenIsReadAgain()
    {
        var finger = new Finger { Seconds = 60, PerfusionPercent = 1.2, BreathingPercent = 0.3, NoisePercent = 0.002 };
        var air = (finger with { PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (0.66 + Drift(t), 0.74 + Drift(t)) }).Samples();
        var back = (finger with { PerfusionPercent = 0.9, Movement = _ => (0.1, 0.03) }).Samples();
        var heard = Heard.Of(RateHz, [.. Between(20, 36, finger, air)[..3600], .. back[3600..]]);
        Assert.All(Enumerable.Range(44, 16), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));

        static double Drift(double t) => (t + 1) % 3 < 2 ? 0.004 * (1 - Math.Cos(2 * Math.PI * ((t + 1) % 3))) : 0;
    }

    [Fact]
    public void LightThatHasGoneFarMayBeAFingerGoneUntilAPulseIsSeenInIt()
    {
        var heard = Heard.Of(RateHz, WithLeak(0.586, 0.394));
        Assert.Equal(Reasons.NoFinger | Reasons.Misplaced, heard.ReasonsAt(22) & (Reasons.NoFinger | Reasons.Misplaced));
        Assert.All(Enumerable.Range(30, 7), second => Assert.Equal(Reasons.Misplaced, heard.ReasonsAt(second)));
    }

    // Its pulse was seen all the while: the leak's last seconds are none of a finger that sits anew.
    [Fact]
    public void AFingerHalfOffWhosePulseIsSeenHasNotLeft()
    {
        var heard = Heard.Of(RateHz, WithLeak(0.586, 0.394));
        Assert.Single(heard.Sittings);
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // Lamps beside a finger that never left, uneven for longer than a window, then even: their light divides its pulse still.
    [Fact]
    public void AFingerBesideBrightUnevenLightHasNotBeenPutBackWhenThatIsEven()
    {
        double Lamps(double t) => AddedLight.Ramp(t, 20, 0.3) * (1 - AddedLight.Ramp(t, 50, 0.3)) * (1 + (t < 34 ? 0.05 * Math.Sin(2 * Math.PI * 1.7 * t) : 0));
        var samples = new Finger { Seconds = 70, Spo2 = _ => 90 }.Samples().With(RateHz, t => (20_000 * Lamps(t), 60_000 * Lamps(t)));
        var heard = Heard.Of(RateHz, samples);
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - 90) > PercentTolerance);
        Assert.All(Enumerable.Range(56, 14), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));
    }

    // Two or three beats in four seconds would be too few of an unknown finger; this one has shown before that it is one.
    [Theory]
    [InlineData(47)]
    [InlineData(51)]
    [InlineData(57)]
    [InlineData(72)]
    public void TheSameFingerIsReadWithinFiveSecondsOfItsReturn(double pulsePerMinute)
    {
        var finger = new Finger { Seconds = 45, PulsePerMinute = pulsePerMinute, BreathingPercent = 1 };
        var heard = Heard.Of(RateHz, Between(20, 30, finger, finger.Air()));
        Assert.Contains(heard.Usable, s => s.SecondIndex is >= 30 and <= 35);
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // What smoothing takes away from the jerk with which a finger comes looks like noise, in which a weak pulse drowns.
    [Fact]
    public void TheJerkOfItsReturnIsNoNoiseInTheSecondsAfterIt()
    {
        var finger = new Finger { Seconds = 45, PulsePerMinute = 54, PerfusionPercent = 0.7, NoisePercent = 0.001 };
        var dark = (finger with { PerfusionPercent = 0, BreathingPercent = 0, Movement = _ => (-4, -2.5) }).Samples();
        var heard = Heard.Of(RateHz, Between(20.4, 30.5, finger, dark));
        Assert.All(Enumerable.Range(35, 10), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));
    }

    // Three waves of a flicker taken for one have a third harmonic larger than the first.
    [Theory]
    [InlineData(50, 0.002, 6)]
    [InlineData(100, 0.004, 6.27)]
    public void ThreeWavesOfAFlickerAreNoBeat(double rateHz, double swing, double hz)
    {
        double At(double t) => swing * Math.Sin(2 * Math.PI * hz * t);
        var air = new Finger { PerfusionPercent = 0, BreathingPercent = 0, RateHz = rateHz, Movement = t => (At(t), 0.87 * At(t)) };
        Assert.DoesNotContain(Heard.Of(rateHz, air.Samples()).Usable, s => s.SecondIndex >= 8);
    }

    // Within the second in which it leaves, and in the one in which it comes, it moves, and for a part of it there is none.
    [Fact]
    public void TheSecondsInWhichAFingerLeavesAndComesHaveNone()
    {
        double Air(double t) => AddedLight.Ramp(t, 20.2, 0.4) - AddedLight.Ramp(t, 32.3, 0.4);
        var heard = Heard.Of(RateHz, new Finger { Seconds = 45 }.Samples().With(RateHz, t => (90_000 * Air(t), 120_000 * Air(t))));
        Assert.All((int[])[20, 32], second => Assert.Equal(Reasons.NoFinger | Reasons.Motion, heard.ReasonsAt(second) & (Reasons.NoFinger | Reasons.Motion)));
    }

    // For some seconds the window is still full of the finger, and its pulse is told from the jerk; that says nothing of what is in the clip now.
    [Theory]
    [InlineData(1, false)]
    [InlineData(2.7, true)]
    public void AFingerThatHasJustLeftIsNotThereBecauseItsPulseIsInTheWindow(double brightness, bool hasLeft)
    {
        var judge = new SecondJudge(CalibrationCurve.TextbookLine, new(), hasRed: true);
        for (var second = 8; second < 20; second++)
        {
            judge.Judge(At(second, 1, isSeparated: false));
        }

        Assert.Equal(hasLeft, judge.Judge(At(20, brightness, isSeparated: true)).Unusable is { } refused && refused.Reasons.HasFlag(Reasons.NoFinger));

        static SignalSecond At(int second, double brightness, bool isSeparated)
        {
            var light = new SecondLight(0, 0, 80_000 * brightness, 60_000 * brightness, double.NaN, double.NaN, double.NaN, 0.004, 1e-4);
            var fit = new RatioFit(8, 0.6, 0.001, 0, 0.01, 1e-4, false, 0, 0, false, 0, default, isSeparated);
            return new(second, light, fit, new WindowPulse(10, 75, 0, 0.03, 0.97, 0.8, 0.99, 1, 0.5, 0.2, double.NaN, double.NaN, 2, 2), false);
        }
    }

    // Hardly brighter than the finger, and what is left swings by a tenth of its pulse, evenly: no finger that any slip would leave.
    [Fact]
    public void AFingerThatLeavesALittleLightAndNoPulseMayHaveGone()
    {
        var samples = new Finger { Seconds = 50 }.Samples();
        for (var n = 2000; n < samples.Length; n++)
        {
            var swing = 1 + (0.0012 * Math.Sin(2 * Math.PI * 2.5 * n / RateHz));
            samples[n] = Sample.OfLight(60_000 * 1.28 * swing, 80_000 * 1.2 * swing);
        }

        var heard = Heard.Of(RateHz, samples);
        Assert.All(Enumerable.Range(26, 20), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.NoFinger), $"{second}: {heard.ReasonsAt(second)}"));
    }

    // Half off for two seconds, then out: the second sitting is another one.
    [Fact]
    public void AFingerThatSlipsOutHasLeft()
    {
        var finger = new Finger { Seconds = 50 };
        var half = finger with { PerfusionPercent = 0.3, Movement = t => (0.4 + (0.02 * Math.Sin(2 * Math.PI * 1.7 * t)), 0.5 + (0.01 * Math.Sin(2 * Math.PI * 2.3 * t))) };
        var samples = Between(20, 22, finger, half.Samples());
        samples.AsSpan(2200, 600).Fill(Sample.OfLight(262_143, 262_143));
        Assert.Equal(2, Heard.Of(RateHz, samples, fullScale: 262_143).Sittings.Count());
    }

    // Whatever was taken for the pulse, another one many times as high, with an R of its own, is not refused for ever.
    [Fact]
    public void APulseThatStaysManyTimesAsHighIsReadInTheEnd()
    {
        var weak = new Finger { Seconds = 70, PerfusionPercent = 0.4 };
        var heard = Heard.Of(RateHz, Between(20, 70, weak, (weak with { PerfusionPercent = 3, Spo2 = _ => 94 }).Samples()));
        Assert.Equal(Reasons.Motion, heard.ReasonsAt(40));
        Assert.All(Enumerable.Range(55, 15), second => Assert.Equal(Reasons.None, heard.ReasonsAt(second)));
        Assert.All(heard.Usable.Where(s => s.SecondIndex >= 55), s => Assert.Equal(94, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // What comes past the finger is as much as its own light times what this rises by.
    private static Sample?[] WithLeak(double infraredRise, double redRise)
    {
        static double Past(double t, double rise) => (Math.Exp(rise) - 1) * AddedLight.Ramp(t, 19.5, 1.5) * (1 - AddedLight.Ramp(t, 37, 1.5));
        return new Finger { Seconds = 60, PulsePerMinute = 81 }.Samples()
            .With(RateHz, t => (60_000 * Past(t, redRise), 80_000 * Past(t, infraredRise)));
    }

    private static Sample?[] Between(double from, double to, Finger other) =>
        Between(from, to, new Finger { Seconds = other.Seconds }, other.Samples());

    private static Sample?[] Between(double from, double to, Finger finger, Sample?[] other)
    {
        var samples = finger.Samples();
        var first = (int)(from * RateHz);
        other.AsSpan(first, (int)(to * RateHz) - first).CopyTo(samples.AsSpan(first));
        return samples;
    }
}
