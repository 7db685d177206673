using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A lamp is one frequency, as many counts in either light; a movement may by chance have nearly either. Where nothing tells, both are named.</summary>
public sealed class LampOrMovementTests
{
    private const double RateHz = 100;
    private const double EqualCounts = 80_000.0 / 60_000;

    // Peak to peak of the finger's infrared pulse: 2 % of 80 000 counts.
    private const double PulseCounts = 1600;

    // Before a pulse is known, the taller lamp looks like the wave and the pulse like the line beside it.
    [Theory]
    [InlineData(2.2, 4)]
    [InlineData(2.6, 4)]
    public void ALampTallerThanAPulseThatWasNeverSeenIsNamed(double hz, double size)
    {
        var samples = new Finger { Seconds = 60 }.Samples().WithRoomLight(RateHz, t => size * PulseCounts / 2 * (1 + Math.Sin(2 * Math.PI * hz * t)));
        var heard = Heard.Of(RateHz, samples);
        Assert.All(Refused(heard, 9), reasons => Assert.True(reasons.HasFlag(Reasons.AmbientLight), $"{reasons}"));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, 0.6));
    }

    // The light is never negative: with the lamp's swing its mean has come as well.
    [Fact]
    public void ALampThatBrightensTheLightIsNamedWhateverItsCountsInEitherChannel()
    {
        const double hz = 6.5;
        double At(double t, double phase) => AddedLight.Ramp(t, 20, 0.1) * 3 * PulseCounts * (1 + Math.Sin((2 * Math.PI * hz * t) + phase));
        var samples = new Finger { Seconds = 60, PerfusionPercent = 3 }.Samples().With(RateHz, t => (1.17 * At(t, -0.5), At(t, 0)));
        var heard = Heard.Of(RateHz, samples);
        Assert.NotEmpty(Refused(heard, 26));
        Assert.All(Refused(heard, 26), reasons => Assert.True(reasons.HasFlag(Reasons.AmbientLight), $"{reasons}"));
    }

    // Rhythmic, but not as even as mains; of the counts that room light would have, or of those that make the finger's own pulse look so.
    [Theory]
    [InlineData(0.02, EqualCounts, 1.6)]
    [InlineData(0.008, 1.15 * EqualCounts, 2.1)]
    [InlineData(0.05, 0.4, 2.5)]
    public void RhythmicMovementFromTheStartIsNeverALampAlone(double size, double mix, double hz)
    {
        double At(double t)
        {
            var phase = 2 * Math.PI * ((hz * t) + (0.06 * Math.Sin(2 * Math.PI * 0.11 * t)));
            return size * (1 + (0.15 * Math.Sin(2 * Math.PI * 0.23 * t))) * (Math.Sin(phase) + (0.3 * Math.Sin((2 * phase) + 1)));
        }

        var heard = Heard.Of(RateHz, new Finger { Seconds = 60, Spo2 = _ => 76, PerfusionPercent = 3, Movement = t => (At(t), mix * At(t)) }.Samples());
        Assert.NotEmpty(Refused(heard, 9));
        Assert.All(Refused(heard, 9), reasons => Assert.True((reasons & (Reasons.Motion | Reasons.Misplaced)) != Reasons.None, $"{reasons}"));
    }

    // A second or two of a slip may look like one frequency; where the light itself has come past the finger, that helps nobody.
    [Theory]
    [InlineData(1, 97)]
    [InlineData(2, 97)]
    [InlineData(3, 97)]
    [InlineData(4, 97)]
    [InlineData(1, 76)]
    [InlineData(2, 77)]
    public void ASlipIsNoLampBecauseItSwingsOnce(int seed, double percent)
    {
        var random = new Random(seed);
        var waves = Enumerable.Range(0, 12).Select(_ => (Hz: 0.5 + (2 * random.NextDouble()), Phase: 6.3 * random.NextDouble())).ToArray();
        double Leak(double t) => 0.25 * AddedLight.Ramp(t, 20, 12) * (1 + (0.012 * waves.Sum(w => Math.Sin((2 * Math.PI * w.Hz * t) + w.Phase))));
        var samples = new Finger { Seconds = 40, Spo2 = _ => percent }.Samples().With(RateHz, t => (60_000 * 2 * Leak(t), 80_000 * Leak(t)));
        var heard = Heard.Of(RateHz, samples);
        Assert.NotEmpty(Refused(heard, 20));
        Assert.All(Refused(heard, 20), reasons => Assert.False(reasons.HasFlag(Reasons.AmbientLight), $"{reasons}"));
    }

    // Of a known finger one frequency in equal counts is a lamp, if it is as even as a lamp.
    [Theory]
    [InlineData(0.012, 1.5, 1.7, 97)]
    public void UnevenMovementOfAKnownFingerIsSeldomALampAlone(double size, double mix, double hz, double percent)
    {
        double At(double t)
        {
            var phase = 2 * Math.PI * ((hz * t) + (0.06 * Math.Sin(2 * Math.PI * 0.11 * t)));
            return AddedLight.Ramp(t, 20, 0.3) * size * (1 + (0.15 * Math.Sin(2 * Math.PI * 0.23 * t))) * (Math.Sin(phase) + (0.1 * Math.Sin((2 * phase) + 1)));
        }

        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, Spo2 = _ => percent, PerfusionPercent = 3, Movement = t => (At(t), mix * At(t)) }.Samples());
        // In most seconds the pulse is told from it; of all twenty, one in ten may be called a lamp.
        Assert.InRange(Refused(heard, 20).Count(reasons => reasons == Reasons.AmbientLight), 0, 2);
    }

    // Channels are amplified each for itself: what comes at once in nearly as many counts may be a lamp or a finger half off.
    [Theory]
    [InlineData(0.9, 0.2, Reasons.AmbientLight | Reasons.Misplaced)]
    [InlineData(1.2, 0.2, Reasons.AmbientLight | Reasons.Misplaced)]
    [InlineData(0.5, 15, Reasons.Misplaced)]
    [InlineData(0.9, 15, Reasons.Misplaced)]
    public void AStepOfNearlyTheSameCountsMayBeALamp(double redShare, double rampSeconds, Reasons reasons)
    {
        double At(double t) => 16_000 * AddedLight.Ramp(t, 20, rampSeconds);
        var heard = Heard.Of(RateHz, new Finger { Seconds = 50 }.Samples().With(RateHz, t => (redShare * At(t), At(t))));
        Assert.All(Enumerable.Range(36, 12), second => Assert.Equal(reasons, heard.ReasonsAt(second)));
    }

    // What comes at once is far from as many counts, but leaps as a lamp does: what leapt stays what it is for as long as it is there.
    [Fact]
    public void AStepOfFarFromTheSameCountsMayBeALampBecauseItLeaps()
    {
        double At(double t) => 16_000 * AddedLight.Ramp(t, 20, 0.2);
        var heard = Heard.Of(RateHz, new Finger { Seconds = 50 }.Samples().With(RateHz, t => (0.5 * At(t), At(t))));
        Assert.All(Enumerable.Range(36, 12), second => Assert.Equal(Reasons.AmbientLight | Reasons.Misplaced, heard.ReasonsAt(second)));
    }

    // A lamp so bright that the finger's own light is the smaller part, and flickers: whether the finger has gone under it, nothing tells.
    [Fact]
    public void ABrightLampThatHidesTheFingersPulseIsNamedBesideAFingerThatMayHaveGone()
    {
        double At(double t) => AddedLight.Ramp(t, 20, 0.1) * 50_000 * (1 + (0.04 * Math.Sin(2 * Math.PI * 2.7 * t)));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40, PerfusionPercent = 0.5 }.Samples().WithRoomLight(RateHz, At));
        var named = Enumerable.Range(22, 5).Count(second => heard.ReasonsAt(second) == (Reasons.AmbientLight | Reasons.NoFinger | Reasons.Misplaced));
        Assert.InRange(named, 4, 5);
    }

    // The first seconds of a slip are as sudden; it goes on.
    [Fact]
    public void ASlipThatHasJustBegunIsNoLamp()
    {
        double At(double t) => 40_000 * AddedLight.Ramp(t, 20, 6);
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40 }.Samples().With(RateHz, t => (0.9 * At(t), At(t))));
        Assert.All(Enumerable.Range(23, 3), second => Assert.Equal(Reasons.Misplaced, heard.ReasonsAt(second)));
    }

    private static Reasons[] Refused(Heard heard, int from) =>
        [.. heard.Seconds.Where(s => s.SecondIndex >= from && s.Unusable is not null).Select(s => s.Unusable!.Value.Reasons)];
}
