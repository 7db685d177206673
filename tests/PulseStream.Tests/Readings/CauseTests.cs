using PulseStream.Readings;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Readings;

public sealed class CauseTests
{
    private const double RateHz = 100;
    private const double RedCounts = 60_000;
    private const double InfraredCounts = 80_000;

    // The error that a leak may have before it shows, within what an instrument repeats to: a window's pulse tells of the light of seconds ago.
    private const double UnseenLeakTolerance = 1.5;

    [Theory]
    [InlineData(0.4, 0)]
    [InlineData(0.4, 0.25)]
    [InlineData(0.1, 0.4)]
    public void AFingerThatSlipsSlowlyIsMisplacedBeforeItIsFarOff(double redLeak, double infraredLeak)
    {
        // A share of each emitter's light comes to pass the finger within fifteen seconds.
        double Leak(double t, double share) => share * AddedLight.Ramp(t, 20, 15) / (1 - (share * AddedLight.Ramp(t, 20, 15)));
        var samples = new Finger { Seconds = 45 }.Samples()
            .With(RateHz, t => (RedCounts * Leak(t, redLeak), InfraredCounts * Leak(t, infraredLeak)));
        var heard = Heard.Of(RateHz, samples);
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, UnseenLeakTolerance));
        Assert.All(Enumerable.Range(33, 12), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.Misplaced)));
    }

    [Fact]
    public void AStepOfTheSameCountsInBothChannelsIsAmbientLight()
    {
        var samples = new Finger { Seconds = 40 }.Samples().WithRoomLight(RateHz, t => 15_000 * AddedLight.Ramp(t, 20, 0.2));
        var heard = Heard.Of(RateHz, samples);
        Assert.All(Enumerable.Range(21, 8), second => Assert.Equal(Reasons.AmbientLight, heard.ReasonsAt(second)));
    }

    // A finger that slips may by chance let as many counts past it in both channels.
    [Fact]
    public void TheSameCountsThatComeWithinManySecondsMayBeASlipToo()
    {
        var samples = new Finger { Seconds = 50 }.Samples().WithRoomLight(RateHz, t => 30_000 * AddedLight.Ramp(t, 20, 15));
        var heard = Heard.Of(RateHz, samples);
        Assert.All(Enumerable.Range(30, 18), second => Assert.Equal(Reasons.AmbientLight | Reasons.Misplaced, heard.ReasonsAt(second)));
    }

    // It takes as much from either pulse: their ratio stays.
    [Fact]
    public void WhereBothChannelsAreEquallyBrightAddedLightHarmsNothing()
    {
        var equal = Array.ConvertAll(new Finger { Seconds = 40 }.Samples(), s => (Sample?)Sample.OfLight(s!.Value.Red, s.Value.Infrared * 0.75));
        var heard = Heard.Of(RateHz, equal.WithRoomLight(RateHz, t => 30_000 * AddedLight.Ramp(t, 20, 0.2)));
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 28), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, 0.3));
    }

    // Veins that empty brighten both lights by some percent; what moves the finger afterwards is none the less movement.
    [Fact]
    public void MovementOfAFingerWhoseLightHasRisenIsMovementToo()
    {
        (double, double) Movement(double t)
        {
            var rise = 0.08 * AddedLight.Ramp(t, 20, 15);
            var shake = 0.03 * AddedLight.Ramp(t, 38, 0.5);
            return (rise + (shake * (Math.Sin(7.1 * t) + Math.Sin(11.3 * t))), (0.8 * rise) + (shake * (Math.Sin(7.1 * t) - Math.Sin(16.7 * t))));
        }

        var heard = Heard.Of(RateHz, new Finger { Seconds = 55, Movement = Movement }.Samples());
        var refused = heard.Seconds.Where(s => s.SecondIndex > 40 && !s.IsUsable).ToArray();
        Assert.InRange(refused.Length, 3, 14);
        Assert.All(refused, s => Assert.True(s.Unusable!.Value.Reasons.HasFlag(Reasons.Motion), $"{s.SecondIndex}"));
    }

    [Fact]
    public void RhythmicMovementOfAKnownFingerIsMotion()
    {
        double At(double t) => 0.05 * AddedLight.Ramp(t, 20, 0.3) * (Math.Sin(2 * Math.PI * 2.2 * t) + (0.3 * Math.Sin((4 * Math.PI * 2.2 * t) + 1)));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, Movement = t => (At(t), 0.9 * At(t)) }.Samples());

        // A hand that shakes has a second harmonic. In some seconds the pulse can be told from it; in some its one frequency may as well be a lamp's.
        Assert.All(Enumerable.Range(21, 19), second => Assert.True(heard.ReasonsAt(second) is Reasons.None or Reasons.Motion or (Reasons.Motion | Reasons.AmbientLight)));
        Assert.Contains(Enumerable.Range(21, 19), second => heard.ReasonsAt(second) == Reasons.Motion);
    }

    // A lamp that adds another share to either light is one frequency all the same; whether it is a lamp or a hand that
    // shakes evenly, nothing tells.
    [Fact]
    public void ALineOfUnequalCountsIsALampOrMovement()
    {
        var heard = BesideLine(1.2, size: 0.1);
        var refused = Enumerable.Range(22, 18).Select(second => heard.ReasonsAt(second)).Where(reasons => reasons != Reasons.None).ToArray();
        Assert.NotEmpty(refused);
        Assert.All(refused, reasons => Assert.True(reasons is Reasons.Motion or (Reasons.AmbientLight | Reasons.Motion), $"{reasons}"));
        Assert.Contains(Reasons.AmbientLight | Reasons.Motion, refused);
    }

    // Where it is no larger than some pulses it is no matter which of both it is.
    [Theory]
    [InlineData(2.4)]
    [InlineData(3.1)]
    [InlineData(3.6)]
    [InlineData(5.8)]
    public void ALineOfUnequalCountsIsReadThrough(double hz) =>
        Assert.All(BesideLine(hz).Seconds.Skip(22), second => Assert.Equal(97, second.Usable!.Value.Spo2!.Value.Percent, 1.0));

    private static Heard BesideLine(double hz, double size = 0.015)
    {
        double At(double t) => size * AddedLight.Ramp(t, 20, 0.3) * Math.Sin(2 * Math.PI * hz * t);
        return Heard.Of(RateHz, new Finger { Seconds = 40, Movement = t => (At(t), 2.2 * At(t)) }.Samples());
    }

    // A movement of many frequencies that happens to move as many counts of either light.
    [Fact]
    public void MovementOfEqualCountsFromTheStartIsNoRoomLight()
    {
        const double turnsPerSecond = 5;
        var random = new Random(5);
        var places = Enumerable.Range(0, 300).Select(_ => 0.06 * (random.NextDouble() - 0.5)).ToArray();
        double At(double t)
        {
            var turn = t * turnsPerSecond;
            var share = 0.5 - (0.5 * Math.Cos(Math.PI * (turn - Math.Floor(turn))));
            return (places[(int)turn] * (1 - share)) + (places[(int)turn + 1] * share);
        }

        const double equalCounts = InfraredCounts / RedCounts;
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, Movement = t => (At(t), equalCounts * At(t)) }.Samples());
        Assert.DoesNotContain(Enumerable.Range(9, 31), second => heard.ReasonsAt(second).HasFlag(Reasons.AmbientLight));
        Assert.Empty(heard.Usable);
    }

    // At 40 a minute there are seconds in which no beat reaches the end stop: the light is no less too bright in them.
    [Fact]
    public void BetweenTheBeatsThatReachTheEndStopTheLightIsTooBrightToo()
    {
        const double endStop = 80_300;
        var samples = Array.ConvertAll(
            new Finger { Seconds = 40, PulsePerMinute = 40 }.Samples(),
            s => (Sample?)Sample.OfLight(s!.Value.Red, Math.Min(s.Value.Infrared, endStop)));
        var heard = Heard.Of(RateHz, samples);
        Assert.All(Enumerable.Range(4, 36), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.Saturated), $"{second}: {heard.ReasonsAt(second)}"));
    }

    // A breath lifts the light into the end stop every few seconds; what lies between is as bright but for the breath.
    [Fact]
    public void BetweenTheBreathsThatReachTheEndStopTheLightIsTooBrightToo()
    {
        const double endStop = 81_300;
        var samples = Array.ConvertAll(
            new Finger { Seconds = 60, BreathingPercent = 2 }.Samples(),
            s => (Sample?)Sample.OfLight(s!.Value.Red, Math.Min(s.Value.Infrared, endStop)));
        var heard = Heard.Of(RateHz, samples);
        var refused = heard.Seconds.Where(s => s.SecondIndex >= 5 && s.Unusable is not null).ToArray();
        Assert.Contains(refused, s => s.Unusable!.Value.Reasons == Reasons.Saturated);
        Assert.DoesNotContain(refused, s => !s.Unusable!.Value.Reasons.HasFlag(Reasons.Saturated));
    }

    // What the window has yet to lose is one thing; light that still comes past the finger another.
    [Fact]
    public void AfterTheEndStopLightThatStillComesPastTheFingerIsNamed()
    {
        const double endStop = 120_000;
        double Leak(double t) => t < 20 ? 0 : t < 22 ? 0.6 : 0.2;
        var samples = Array.ConvertAll(
            new Finger { Seconds = 40 }.Samples().With(RateHz, t => (0.3 * RedCounts * Leak(t), InfraredCounts * Leak(t))),
            s => (Sample?)Sample.OfLight(s!.Value.Red, Math.Min(s.Value.Infrared, endStop)));
        var heard = Heard.Of(RateHz, samples);
        var settling = Enumerable.Range(24, 6).Select(second => heard.ReasonsAt(second)).Where(reasons => reasons.HasFlag(Reasons.Settling)).ToArray();
        Assert.NotEmpty(settling);
        Assert.All(settling, reasons => Assert.True(reasons.HasFlag(Reasons.Misplaced), $"{reasons}"));
    }

    // Once the emitters are as dim as they were, the light is no longer too bright while the window fills.
    [Fact]
    public void AfterTheEndStopADimmerLightSettles()
    {
        var samples = Array.ConvertAll(new Finger { Seconds = 40 }.Samples(), s => s);
        for (var n = 2000; n < 2600; n++)
        {
            samples[n] = Sample.OfLight(samples[n]!.Value.Red, Math.Min(2 * samples[n]!.Value.Infrared, 150_000));
        }

        Assert.Equal(Reasons.Settling, Heard.Of(RateHz, samples).ReasonsAt(28));
    }

    // Fast shaking passes for noise; where no finger was seen, the light does not tell a thing in the clip from nothing.
    [Theory]
    [InlineData(9.5)]
    [InlineData(11)]
    public void SomethingThatVibratesFromTheStartMayBeSomethingLifeless(double hz)
    {
        double At(double t) => 0.01 * Math.Sin(2 * Math.PI * hz * t);
        var lifeless = new Finger { PerfusionPercent = 0, BreathingPercent = 0, Movement = t => (At(t), 0.8 * At(t)) };
        var heard = Heard.Of(RateHz, lifeless.Samples());
        Assert.All(Enumerable.Range(9, 21), second => Assert.True(
            (heard.ReasonsAt(second) & (Reasons.Misplaced | Reasons.Motion)) != Reasons.None, $"{second}: {heard.ReasonsAt(second)}"));
    }

    [Fact]
    public void AnUnknownFingerTooWeakToReadMayBeNone()
    {
        var heard = Heard.Of(RateHz, new Finger { PerfusionPercent = 0.02, NoisePercent = 0.02 }.Samples());
        Assert.All(Enumerable.Range(9, 21), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.Misplaced), $"{second}: {heard.ReasonsAt(second)}"));
    }

    [Fact]
    public void AWaveWithoutAFrontFromTheStartMayBeMovementOrSomethingLifeless()
    {
        double At(double t) => 0.02 * Math.Sin(2 * Math.PI * 1.4 * t);
        var lifeless = new Finger { PerfusionPercent = 0, Movement = t => (At(t), 0.8 * At(t)) };
        Assert.Equal(Reasons.Motion | Reasons.Misplaced, Heard.Of(RateHz, lifeless.Samples()).ReasonsAt(12));
    }

    [Fact]
    public void SomethingLifelessThatDriftsHasNoWeakPulse()
    {
        double At(double t) => 0.003 * Math.Sin(2 * Math.PI * 0.07 * t);
        var lifeless = new Finger { PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.002, Seconds = 40, Movement = t => (At(t), 1.1 * At(t)) };
        var heard = Heard.Of(RateHz, lifeless.Samples());
        Assert.All(Enumerable.Range(9, 31), second => Assert.Equal(Reasons.NoPulse | Reasons.Misplaced, heard.ReasonsAt(second)));
    }

    [Fact]
    public void AKnownFingerWhosePulseIsGoneIsNotMisplaced()
    {
        var samples = new Finger { Seconds = 40 }.Samples();
        new Finger { Seconds = 40, PerfusionPercent = 0 }.Samples().AsSpan(2000).CopyTo(samples.AsSpan(2000));
        var heard = Heard.Of(RateHz, samples);
        Assert.All(Enumerable.Range(30, 10), second => Assert.Equal(Reasons.NoPulse, heard.ReasonsAt(second)));
    }

    [Fact]
    public void FastShakingIsNotStillAir()
    {
        // Nine hertz passes for noise at the smoothing's edge.
        double At(double t) => 0.05 * (Math.Sin(2 * Math.PI * 3 * t) + Math.Sin((2 * Math.PI * 9 * t) + 1));
        var heard = Heard.Of(500, new Finger { RateHz = 500, Seconds = 20, Movement = t => (At(t), 2.5 * At(t)) }.Samples());
        Assert.All(heard.Seconds.Skip(4), second => Assert.False(heard.ReasonsAt(second.SecondIndex).HasFlag(Reasons.NoFinger)));
    }

    // Light that both emitters send brighter than through the finger has nothing in its way. As bright as before, darker, or
    // brighter in one alone, something that does not live may be in the clip as well.
    [Theory]
    [InlineData(0.9, 0.9, Reasons.NoFinger)]
    [InlineData(0, 0, Reasons.NoFinger | Reasons.Misplaced)]
    [InlineData(-0.6, -0.9, Reasons.NoFinger | Reasons.Misplaced)]
    [InlineData(-0.05, -0.5, Reasons.NoFinger | Reasons.Misplaced)]
    [InlineData(0.9, 0.1, Reasons.NoFinger | Reasons.Misplaced)]
    public void StillLightIsAirOrSomethingElseByItsLevel(double infrared, double red, Reasons reasons)
    {
        var samples = new Finger { Seconds = 30 }.Samples();
        var air = new Finger { Seconds = 30, PerfusionPercent = 0, BreathingPercent = 0, Movement = _ => (infrared, red) }.Samples();
        air.AsSpan(2000).CopyTo(samples.AsSpan(2000));
        Assert.Equal(reasons, Heard.Of(RateHz, samples).ReasonsAt(24));
    }

    [Fact]
    public void APulseThatStopsWithinASecondIsAFingerGone()
    {
        var samples = new Finger { Seconds = 30 }.Samples();
        var still = (new Finger { Seconds = 30, PerfusionPercent = 0, BreathingPercent = 0 }).Samples();
        still.AsSpan(2000).CopyTo(samples.AsSpan(2000));
        Assert.Equal(Reasons.NoFinger | Reasons.Misplaced, Heard.Of(RateHz, samples).ReasonsAt(20));
    }

    [Fact]
    public void ChanceShakingOfSomethingLifelessIsNeverUsable()
    {
        for (var seed = 0; seed < 20; seed++)
        {
            var random = new Random(seed);
            var waves = Enumerable.Range(0, 40).Select(_ => (Hz: 0.3 + (5 * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
            double At(double t) => 0.002 * waves.Sum(w => Math.Sin((2 * Math.PI * w.Hz * t) + w.Phase));
            var lifeless = new Finger { PerfusionPercent = 0, BreathingPercent = 0, Seed = seed, Seconds = 60, Movement = t => (At(t), 0.8 * At(t)) };
            Assert.Empty(Heard.Of(RateHz, lifeless.Samples()).Usable);
        }
    }

    // What leaks past takes the place of what the finger let through: the light stays as bright, R moves by itself.
    [Theory]
    [InlineData(0.55, 0.22)]
    [InlineData(0.2, 0.5)]
    [InlineData(0.62, 0.5)]
    public void AFingerThatSlipsInSteadyLightIsMisplaced(double infraredLeak, double redLeak)
    {
        var samples = new Finger { Seconds = 70, PulsePerMinute = 90, Spo2 = _ => 88 }.Samples().Select((sample, n) =>
        {
            var slipped = AddedLight.Ramp(n / RateHz, 25, 20);
            return (Sample?)Sample.OfLight(
                (sample!.Value.Red * (1 - (redLeak * slipped))) + (RedCounts * redLeak * slipped),
                (sample.Value.Infrared * (1 - (infraredLeak * slipped))) + (InfraredCounts * infraredLeak * slipped));
        });
        var heard = Heard.Of(RateHz, [.. samples]);
        Assert.All(heard.Readings, r => Assert.Equal(88, r.Spo2.Percent, 2.0));
        Assert.All(Enumerable.Range(45, 25), second => Assert.Equal(Reasons.Misplaced, heard.ReasonsAt(second)));
    }

    // Vessels close while saturation falls: infrared's pulse shrinks as in a slip, but red's grows as in none.
    [Fact]
    public void AFallOfSaturationWithASmallerPulseIsNoSlip()
    {
        static double Blood(double t) => 0.5 + ((Finger.Volume(1.5 * t) - 0.5) * (1 - (0.3 * AddedLight.Ramp(t, 20, 12))));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 60, Blood = Blood, Spo2 = t => 96 - (16 * AddedLight.Ramp(t, 20, 20)) }.Samples());
        Assert.DoesNotContain(Enumerable.Range(15, 45), second => heard.ReasonsAt(second).HasFlag(Reasons.Misplaced));
    }

    // Vessels close before and after saturation rises: by as much as in a slip, but not with R.
    [Fact]
    public void ARiseOfSaturationBetweenTwoShrinkingsOfThePulseIsNoSlip()
    {
        static double Blood(double t) =>
            0.5 + ((Finger.Volume(1.2 * t) - 0.5) * (1 - (0.13 * AddedLight.Ramp(t, 12, 4)) - (0.13 * AddedLight.Ramp(t, 31, 4))));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 60, Blood = Blood, Spo2 = t => 74 + (6.5 * AddedLight.Ramp(t, 22, 0.5)) }.Samples());
        Assert.DoesNotContain(Enumerable.Range(15, 45), second => heard.ReasonsAt(second).HasFlag(Reasons.Misplaced));
    }
}
