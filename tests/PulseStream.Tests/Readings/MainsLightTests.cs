using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Mains light folded into the pulse band: a line whose frequency wanders as mains frequency does, added in counts.</summary>
public sealed class MainsLightTests
{
    private const double RateHz = 100;

    // Mains frequency keeps within some hundredths of a hertz over minutes (common practice of grid operation).
    private const double WanderHz = 0.01;

    // Peak to peak of the finger's infrared pulse: 2 % of 80 000 counts.
    private const double PulseCounts = 1600;

    // Half of what an oximeter shows as its last digit, and what light added unseen shifts R by.
    private const double PercentTolerance = 0.4;
    private const double PulseTolerance = 2;

    // Without their second wave beats are seen less sharply: a rate is told that lies within 3 % of the period's.
    private const double RateShareBesideLines = 0.03;

    [Theory]
    [InlineData(72, 2)]
    [InlineData(66, 2)]
    [InlineData(88, 2)]
    [InlineData(72, 3)]
    public void MainsLightOnAHarmonicOfThePulseIsReadThrough(double pulsePerMinute, int harmonic)
    {
        var finger = new Finger { Seconds = 50, PulsePerMinute = pulsePerMinute };
        var samples = finger.Samples().WithRoomLight(RateHz, t => Mains(t, harmonic * pulsePerMinute / 60, PulseCounts / 4));
        var heard = Heard.Of(RateHz, samples);
        var later = heard.Usable.Where(s => s.SecondIndex >= 15).ToArray();
        Assert.InRange(later.Length, 32, 35);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
        Assert.All(later, s => Assert.Equal(pulsePerMinute, s.PulseRatePerMinute!.Value, PulseTolerance));
        Assert.All(later, s => Assert.InRange(97, s.Spo2!.Value.LowPercent, s.Spo2!.Value.HighPercent));
    }

    [Fact]
    public void MainsLightOfItsOwnFrequencyAndThePulsesSizeIsReadThrough()
    {
        var samples = new Finger { Seconds = 50 }.Samples().WithRoomLight(RateHz, t => Mains(t, 3.1, PulseCounts / 2));
        var later = Heard.Of(RateHz, samples).Usable.Where(s => s.SecondIndex >= 15).ToArray();
        Assert.InRange(later.Length, 32, 35);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, 2 * PercentTolerance));
    }

    // Channels are sampled one after the other, and mains light moves on in between.
    [Theory]
    [InlineData(72, 2.4, 0.8)]
    [InlineData(81, 3.44, -0.8)]
    [InlineData(90, 5.2, 0.6)]
    [InlineData(85.5, 2.85, 0.4)]
    public void MainsLightInAnotherPhaseInEitherChannelIsReadThrough(double pulsePerMinute, double hz, double phase)
    {
        var finger = new Finger { Seconds = 50, PulsePerMinute = pulsePerMinute };
        var samples = finger.Samples().With(RateHz, t => (Later(t) * Mains(t + (phase / (2 * Math.PI * hz)), hz, PulseCounts / 3), Later(t) * Mains(t, hz, PulseCounts / 3)));
        var later = Heard.Of(RateHz, samples).Usable.Where(s => s.SecondIndex >= 28).ToArray();
        Assert.InRange(later.Length, 20, 22);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, 2 * PercentTolerance));
        Assert.All(later, s => Assert.Equal(pulsePerMinute, s.PulseRatePerMinute ?? pulsePerMinute, PulseTolerance));

        static double Later(double t) => AddedLight.Ramp(t, 18, 0.3);
    }

    // A lamp that shines on one channel more than on the other cannot be put back: what it leaves of the pulse has no front.
    [Theory]
    [InlineData(60, 9, 0.5, 0.2, 0)]
    [InlineData(80, 4, 1.4, 0.9, 0)]
    [InlineData(66, 4, 1.6, -0.6, 18)]
    [InlineData(100, 2, 0.3, 0.9, 18)]
    [InlineData(126, 3, 1.5, -0.9, 18)]
    public void MainsLightOnTheSecondHarmonicIsReadThroughInOtherCountsOfEitherChannel(double pulsePerMinute, double perfusionPercent, double redShare, double phase, double fromSecond)
    {
        var finger = new Finger { Seconds = 60, PulsePerMinute = pulsePerMinute, PerfusionPercent = perfusionPercent, Blood = t => Thrown(t * pulsePerMinute / 60) };
        var hz = 2 * pulsePerMinute / 60;
        var quarter = perfusionPercent / 100 * 80_000 / 4;
        var samples = finger.Samples().With(RateHz, t => (On(t) * redShare * Mains(t + (phase / (2 * Math.PI * hz)), hz, quarter), On(t) * Mains(t, hz, quarter)));
        var heard = Heard.Of(RateHz, samples);
        var later = heard.Usable.Where(s => s.SecondIndex >= fromSecond + 9).ToArray();
        Assert.InRange(later.Length, 0.9 * (51 - fromSecond), 51 - fromSecond);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
        Assert.All(later, s => Assert.Equal(pulsePerMinute, s.PulseRatePerMinute ?? pulsePerMinute, RateShareBesideLines * pulsePerMinute));

        double On(double t) => fromSecond == 0 ? 1 : AddedLight.Ramp(t, fromSecond, 0.3);
    }

    // With its second wave so tall a slow pulse looks fast, and what is slower than a fast one goes with the baseline.
    [Theory]
    [InlineData(46, 1.5, 0.4, 0.9)]
    [InlineData(50, 1, 0.6, -0.6)]
    public void MainsLightDoesNotTakeTheFirstWaveOfASlowPulseAlong(double pulsePerMinute, double breathingPercent, double redShare, double phase)
    {
        var finger = new Finger { Seconds = 60, PulsePerMinute = pulsePerMinute, BreathingPercent = breathingPercent };
        var hz = 2 * pulsePerMinute / 60;
        var samples = finger.Samples().With(RateHz, t => (On(t) * redShare * Mains(t + (phase / (2 * Math.PI * hz)), hz, PulseCounts / 3), On(t) * Mains(t, hz, PulseCounts / 3)));
        var later = Heard.Of(RateHz, samples).Usable.Where(s => s.SecondIndex >= 28).ToArray();
        Assert.InRange(later.Length, 25, 32);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));

        static double On(double t) => AddedLight.Ramp(t, 18, 0.3);
    }

    // The pulse's harmonics are lines as well: without them it is the movement that is left, and looks like a pulse.
    [Fact]
    public void APulseIsNoMainsLightBesideAnEvenMovementWithAFront()
    {
        const double movementPerMinute = 138;
        var finger = new Finger
        {
            PulsePerMinute = 117,
            Movement = t => (-0.05 * Thrown(Wandering(t)), -0.058 * Thrown(Wandering(t))),
        };
        Assert.DoesNotContain(Heard.Of(RateHz, finger.Samples()).Usable, s => Math.Abs(s.Spo2!.Value.Percent - 97) > 3);

        static double Wandering(double t) => (t * movementPerMinute / 60) + (0.3 * Math.Sin(2 * Math.PI * 0.13 * t)) + (0.1 * Math.Sin(2 * Math.PI * 0.31 * t));
    }

    // A lamp on the second harmonic of a heart that breathes: its frequency drifts along within a window, and what it takes of either
    // light is that emitter's own business.
    [Theory]
    [InlineData(66, 1.6)]
    [InlineData(84, 0.4)]
    [InlineData(96, 2.1)]
    public void ALineThatDriftsWithTheHeartIsReadThrough(double pulsePerMinute, double mix)
    {
        double Phase(double t) => (pulsePerMinute / 60 * t) + (0.12 * Math.Sin((0.55 * t) + 1));
        double Lamp(double t) => 0.25 * 0.02 * Math.Sin((4 * Math.PI * Phase(t)) + 1);
        var finger = new Finger { Seconds = 60, Blood = t => Finger.Volume(Phase(t)), Movement = t => (Lamp(t), mix * Lamp(t)) };
        var later = Heard.Of(RateHz, finger.Samples()).Usable.Where(s => s.SecondIndex >= 15).ToArray();
        Assert.InRange(later.Length, 36, 45);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, 2 * PercentTolerance));
    }

    // Smoothing takes part of a fast line away: that is no white noise.
    [Fact]
    public void FastMainsLightManyTimesThePulseIsNotNoise()
    {
        var samples = new Finger { Seconds = 50 }.Samples().WithRoomLight(RateHz, t => Mains(t, 6.5, 2.5 * PulseCounts));
        var later = Heard.Of(RateHz, samples).Usable.Where(s => s.SecondIndex >= 15).ToArray();
        Assert.InRange(later.Length, 32, 35);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, 2 * PercentTolerance));
    }

    [Theory]
    [InlineData(2.4)]
    [InlineData(3.1)]
    [InlineData(4.7)]
    public void MainsLightThatHasJustBegunIsTakenAwayOrCalledAmbientLight(double hz)
    {
        var samples = new Finger().Samples().WithRoomLight(RateHz, t => AddedLight.Ramp(t, 20, 0.3) * Mains(t, hz, PulseCounts));
        var heard = Heard.Of(RateHz, samples);
        Assert.All(Enumerable.Range(21, 7), second => Assert.True(heard.ReasonsAt(second) is Reasons.None or Reasons.AmbientLight));

        // While it begins the pulse may be told from it as from a movement: then to no more than a point.
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, 1.0));
    }

    [Fact]
    public void OpenAirUnderFlickeringLightIsNoFinger()
    {
        var samples = new Finger { Seconds = 20 }.Air().WithRoomLight(RateHz, t => Mains(t, 1.3, 2000));
        var heard = Heard.Of(RateHz, samples);
        Assert.Empty(heard.Usable);
        Assert.All(Enumerable.Range(8, 12), second => Assert.True(heard.ReasonsAt(second).HasFlag(Reasons.NoFinger)));
    }

    // Rises in a seventh of the beat and falls slowly: its third harmonic is a fifth of the first.
    private static double Thrown(double phase)
    {
        const double front = 0.14;
        var p = phase - Math.Floor(phase);
        return p < front ? Math.Pow(Math.Sin(0.5 * Math.PI * p / front), 2) : Math.Exp(-2.5 * (p - front)) * (1 - ((p - front) / (1 - front)));
    }

    // Never negative, as light is: its mean is half as much again as its amplitude.
    // Light is never negative: a lamp's mean is its amplitude at least, and divides each channel's pulse by its own share of the light.
    [Theory]
    [InlineData(0.02, 0.002)]
    [InlineData(0.001, 0.016)]
    public void TheIntervalHoldsWhatTheMeanOfALampsLightDoes(double redShare, double infraredShare)
    {
        static double Lamp(double t) => 1 + Math.Sin(2 * Math.PI * 3.3 * t);
        var samples = new Finger { Seconds = 40, Spo2 = _ => 90 }.Samples().With(RateHz, t => (redShare * 60_000 * Lamp(t), infraredShare * 80_000 * Lamp(t)));
        var usable = Heard.Of(RateHz, samples).Usable.Select(s => s.Spo2!.Value).ToArray();
        Assert.InRange(usable.Length, 20, 40);
        Assert.All(usable, spo2 => Assert.InRange(90, spo2.LowPercent, spo2.HighPercent));
    }

    private static double Mains(double t, double hz, double amplitude)
    {
        const double slowHz = 1 / 40.0;
        var wander = WanderHz / slowHz * Math.Sin(2 * Math.PI * slowHz * t);
        return amplitude * (1.5 + Math.Sin((2 * Math.PI * hz * t) + wander));
    }
}
