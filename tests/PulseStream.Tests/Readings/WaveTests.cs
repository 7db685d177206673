using PulseStream.Simulation;
using PulseStream.Simulation.Episodes;
using PulseStream.Simulation.Tracks;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>What is taken for a pulse and what is not, on simulated streams whose pulse has the published shape of two bells.</summary>
public sealed class WaveTests
{
    // The seconds from which a quiet finger is read, and what a reading may be off, points.
    private const int StartSeconds = 12;
    private const double PercentTolerance = 0.6;
    private const double VeinsPerfusion = 4;

    [Theory]
    [InlineData(35, 0.3)]
    [InlineData(60, 0.0)]
    [InlineData(60, 0.75)]
    [InlineData(200, 0.2)]
    public void APulseOfAnyShapeIsRead(double pulsePerMinute, double secondWave)
    {
        var heard = Heard.Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave });
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // A second wave as high as the first, and a fall steeper than the front.
    [Fact]
    public void APulseThatFallsAsSteeplyAsItRisesIsRead()
    {
        static double Blood(double t)
        {
            var p = (1.83 * t) - Math.Floor(1.83 * t);
            return p < 0.25 ? Step(p / 0.25) : p < 0.55 ? 1 - (0.12 * Math.Sin(Math.PI * (p - 0.25) / 0.3)) : Step((0.75 - p) / 0.2);
        }

        static double Step(double x) => 0.5 - (0.5 * Math.Cos(Math.PI * Math.Clamp(x, 0, 1)));
        var heard = Heard.Of(100, new Finger { Blood = Blood }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // A heart that beats as evenly as a clock is as steady; the breath beside it tells that it is one.
    [Fact]
    public void AnEvenFastPulseThatBreathesIsRead()
    {
        static double Blood(double t)
        {
            var turn = 2 * Math.PI * 2.5 * t;
            return 0.5 - (0.35 * (Math.Sin(turn) + (0.3 * Math.Sin((2 * turn) + 3.5)) + (0.05 * Math.Sin((3 * turn) + 1))));
        }

        var heard = Heard.Of(100, new Finger { Blood = Blood, BreathingPercent = 0.6 }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
    }

    // Two bells that nearly melt into one at a fast pulse: neither front nor crest, and a third harmonic of a few percent.
    [Fact]
    public void ARoundFastPulseThatBreathesIsRead()
    {
        static double Blood(double t)
        {
            var turn = 2 * Math.PI * 1.9 * t;
            return 0.5 + (0.4 * (Math.Sin(turn) + (0.15 * Math.Sin((2 * turn) + 1.6)) + (0.05 * Math.Sin(3 * turn))));
        }

        var heard = Heard.Of(100, new Finger { Blood = Blood, BreathingPercent = 0.6 }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
    }

    // No finger is made of two harmonics, but what breathes beside its wave is alive, once it was seen to for some seconds.
    [Theory]
    [InlineData(0.5)]
    [InlineData(0.35)]
    public void APulseOfTwoHarmonicsThatBreathesIsRead(double breathingPercent)
    {
        static double Blood(double t) => 0.5 + (0.35 * (Math.Sin(2 * Math.PI * 1.2 * t) + (0.4 * Math.Sin(4 * Math.PI * 1.2 * t))));
        var heard = Heard.Of(100, new Finger { Blood = Blood, BreathingPercent = breathingPercent }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds + 3), s => Assert.True(s.IsUsable));
    }

    // Veins that happen to move as many counts of either light leave what no mains light leaves.
    [Fact]
    public void VenousPulsingOfEqualCountsIsNotTakenForRoomLight()
    {
        var scenario = new Scenario
        {
            Seed = 12,
            RateHz = 250,
            Bits = 17,
            Spo2 = Track.Constant(88.39),
            Pulse = Track.Constant(131.4),
            Perfusion = Track.Constant(VeinsPerfusion),
            SecondWave = 0.587,
            Noise = 1.3e-5,
            Episodes = [new VenousEpisode(20, 45, Size: 0.54, Ratio: 1.786, Lag: 0.1505)],
        };
        Assert.DoesNotContain(Heard.Of(scenario).Readings, r => Math.Abs(r.Spo2.Percent - 88.39) > 3);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(75)]
    public void AWarmingFingerIsReadAllTheTime(double pulsePerMinute)
    {
        var heard = Heard.Of(new() { Pulse = Track.Constant(pulsePerMinute), Perfusion = Track.Ramp(0.3, 3, 10, 50) });
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void SomethingThatStirsByChanceIsNoFinger(ulong seed) =>
        Assert.Empty(Heard.Of(new() { Seed = seed, Episodes = [new LifelessEpisode(double.NegativeInfinity, double.PositiveInfinity, StirPercent: 0.3)] }).Readings);

    [Fact]
    public void RhythmicMovementManyTimesThePulseIsNotTakenForItHoweverLongItLasts()
    {
        var motion = new MotionEpisode(20, 60, MotionKind.Rhythmic, Size: 20, Hz: 1.3, Ratio: 0.45, Apart: 0);
        var heard = Heard.Of(new() { Spo2 = Track.Constant(84), Pulse = Track.Constant(140), Episodes = [motion] });
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - 84) > 3);
    }

    [Fact]
    public void TheMomentAFingerComesOnIsNoPulse()
    {
        var scenario = new Scenario { Seed = 10, RateHz = 200, Episodes = [new FingerOffEpisode(20, 40, 0.03)] };
        Assert.DoesNotContain(Heard.Of(scenario).Usable, s => s.SecondIndex is > 20 and < 42);
    }

    [Fact]
    public void AFingerThatIsPulledHalfOffIsNotTakenForAnother()
    {
        var heard = Heard.Of(new() { Spo2 = Track.Constant(80), Episodes = [new HalfOffEpisode(20, 45, Leak: 0.5, RedLeak: 0.8)] });
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - 80) > 3);
    }

    // Before a slip is sure, what it has done to R is in the interval: without that four in ten hold the truth.
    [Fact]
    public void TheIntervalOfAFingerThatMaySlipIsWider()
    {
        var held = new List<bool>();
        for (ulong seed = 1; seed <= 8; seed++)
        {
            var spo2 = 80 + (2 * seed);
            var heard = Heard.Of(new() { Seed = seed, Spo2 = Track.Constant(spo2), Episodes = [new SlipEpisode(20, 50, 0.25 + (0.05 * seed), 0.2 + (0.1 * seed))] });
            held.AddRange(heard.Usable.Where(s => s.SecondIndex is > 20 and < 50).Select(s => s.Spo2!.Value.LowPercent <= spo2 && spo2 <= s.Spo2!.Value.HighPercent));
        }

        Assert.True(held.Count(h => h) >= 0.6 * held.Count, $"{held.Count(h => h)} of {held.Count}");
    }

    // Every third beat early and weak, with a pause behind it: beats of three lengths, each a steep front and a slow fall.
    [Theory]
    [InlineData(75, 0.55, 0.45)]
    [InlineData(82, 0.55, 0.45)]
    public void BeatsOfThreeLengthsInTurnAreRead(double pulsePerMinute, double early, double height)
    {
        var usual = 60 / pulsePerMinute;
        List<double> fronts = [-3];
        for (var k = 0; fronts[^1] < 62; k++)
        {
            fronts.Add(fronts[^1] + (usual * (1 + (0.03 * Math.Sin(1.3 * fronts[^1]))) * (k % 3 == 0 ? 1 : k % 3 == 1 ? early : 2 - early)));
        }

        double Blood(double t)
        {
            var k = fronts.FindLastIndex(f => f <= t);
            var phase = (t - fronts[k]) / (fronts[k + 1] - fronts[k]);
            var turn = 2 * Math.PI * phase;
            return (Height(k) + ((Height(k + 1) - Height(k)) * phase)) * Math.Pow(0.5 + (0.5 * Math.Sin(turn + (0.75 * Math.Sin(turn)))), 1.2);
        }

        double Height(int k) => k % 3 == 2 ? height : 1;
        var heard = Heard.Of(100, new Finger { Seconds = 60, Blood = Blood }.Samples());
        Assert.InRange(heard.Seconds.Count(s => s.SecondIndex >= 12 && s.IsUsable), 46, 48);
    }

    // A narrow throw with hardly a second wave is as steep as short humps that do not live, more or less from breath to breath: once it was
    // shown to live it is not asked again.
    [Theory]
    [InlineData(83)]
    [InlineData(87)]
    [InlineData(92)]
    public void ANarrowPulseThatIsKnownIsReadThroughout(double pulsePerMinute)
    {
        double Blood(double t)
        {
            var beats = (pulsePerMinute / 60 * t) + (0.06 * Math.Sin(1.6 * t)) + (0.05 * Math.Sin(4.7 * t));
            var width = 8 + Math.Sin(0.9 * t);
            return Narrow(beats, 0.22, width) + (0.12 * Narrow(beats, 0.58, 6)) + (0.25 * Narrow(beats, 0.47, 1.2));
        }

        var heard = Heard.Of(100, new Finger { Seconds = 60, Blood = Blood }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 12), s => Assert.True(s.IsUsable));

        // On a circle, as wide as that of von Mises with this concentration.
        static double Narrow(double beats, double at, double concentration) =>
            Math.Exp(concentration * (Math.Cos(2 * Math.PI * (beats - at)) - 1));
    }
}
