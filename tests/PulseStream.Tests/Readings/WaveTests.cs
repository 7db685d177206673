using PulseStream.Readings;
using PulseStream.Simulation;
using PulseStream.Simulation.Blood;
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
        var heard = Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave });
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

    [Theory]
    [InlineData(1.2, 0.25, 1.5)]
    [InlineData(1.9, 0.2, 1.2)]
    [InlineData(2.5, 0.3, 1.8)]
    public void SomethingThatSwingsWithItsOvertoneIsNoFinger(double hz, double overtone, double phase) =>
        Assert.Empty(Swinging(hz, overtone, phase).Usable);

    // Four beats tell no third harmonic: a first second may pass, and one with noise in it; a reading never comes of them.
    [Theory]
    [InlineData(1.33, 0.25, 3.5)]
    [InlineData(1.1, 0.25, 2.5)]
    public void ASlowSwingWithASteepFrontIsNoReading(double hz, double overtone, double phase)
    {
        var heard = Swinging(hz, overtone, phase);
        Assert.InRange(heard.Usable.Count(), 0, 2);
        Assert.Empty(heard.Readings);
    }

    // Drift that is slow enough for breathing, and a ninth of the swing, makes no life of it.
    [Fact]
    public void ASwingBesideSlowDriftIsNoFinger()
    {
        (double, double) Swing(double t)
        {
            var light = (0.012 * (Math.Sin(2 * Math.PI * 1.37 * t) + (0.25 * Math.Sin((4 * Math.PI * 1.37 * t) + 3.5)))) + (0.0013 * Math.Sin(2 * Math.PI * 0.2 * t));
            return (light, 0.48 * light);
        }

        Assert.Empty(Heard.Of(100, new Finger { PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004, Movement = Swing }.Samples()).Usable);
    }

    // A bump in the light, as by a draught at the clip, is a breath to the one or two windows that it stands in the middle of.
    [Theory]
    [InlineData(0.0050)]
    [InlineData(0.0054)]
    [InlineData(0.0060)]
    public void ASwingBesideOneBreathIsNoReading(double bump)
    {
        (double, double) Swing(double t)
        {
            var light = (0.012 * (Math.Sin(2 * Math.PI * 1.37 * t) + (0.25 * Math.Sin((4 * Math.PI * 1.37 * t) + 3.5)))) + (bump * Math.Exp(-0.5 * (t - 20.5) * (t - 20.5)));
            return (light, 0.48 * light);
        }

        Assert.InRange(Heard.Of(100, new Finger { Seconds = 50, PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004, Movement = Swing }.Samples()).Usable.Count(), 0, 2);
    }

    // The finger is gone and something swings in the clip, in the finger's light and as large as its pulse or twice that; with
    // a third harmonic it is no pure swing, but no finger has so little of it.
    [Theory]
    [InlineData(1.28, 0.010, 0.25, 1.5, 0)]
    [InlineData(1.28, 0.010, 0.25, 2.5, 0.015)]
    [InlineData(1.28, 0.012, 0.25, 4, 0.015)]
    [InlineData(1.28, 0.0165, 0.25, 4, 0)]
    [InlineData(2.35, 0.010, 0.4, 3.6, 0)]
    public void ASwingInTheFingersPlaceIsNotItsNewPulse(double hz, double size, double overtone, double overtonePhase, double third)
    {
        const double change = 25;
        static double Blood(double t) => t < change ? Finger.Volume(1.2 * t) : 0.5;
        (double, double) Swing(double t)
        {
            var turn = 2 * Math.PI * hz * t;
            var light = t < change ? 0 : size * (Math.Sin(turn) + (overtone * Math.Sin((2 * turn) + overtonePhase)) + (third * Math.Sin(3 * turn)));
            return (light, 0.87 * light);
        }

        var heard = Heard.Of(100, new Finger { Seconds = 80, Blood = Blood, BreathingPercent = 0.1, Movement = Swing }.Samples());
        Assert.Contains(heard.Usable, s => s.SecondIndex < change);
        Assert.DoesNotContain(heard.Usable, s => s.SecondIndex > change + 8);
    }

    // Where the finger's own front was blunt, a slow swing has one like it: four beats cannot tell, the whole window can.
    [Fact]
    public void ASlowSwingInABluntFingersPlaceIsNoReading()
    {
        const double change = 25;
        static double Blood(double t)
        {
            var turn = 2 * Math.PI * ((1.2 * t) + (0.04 * Math.Sin(2 * Math.PI * 0.2 * t)));
            return t < change ? 0.5 - (0.35 * (Math.Cos(turn) + (0.3 * Math.Cos((2 * turn) - 0.9)) + (0.1 * Math.Cos(3 * turn)))) : 0.5;
        }

        static (double, double) Swing(double t)
        {
            var turn = 2 * Math.PI * 1.1 * t;
            var light = t < change ? 0 : 0.01 * (Math.Sin(turn) + (0.25 * Math.Sin((2 * turn) + 2.5)));
            return (light, 0.87 * light);
        }

        var heard = Heard.Of(100, new Finger { Seconds = 80, Blood = Blood, BreathingPercent = 0, Movement = Swing }.Samples());
        Assert.Contains(heard.Readings, r => r.SecondIndex < change);
        Assert.Equal([], heard.Readings.Where(r => r.SecondIndex > change).Select(r => r.SecondIndex));
    }

    // Three harmonics make a front and a third wave, but keep their rate and their shape as no heart does.
    [Theory]
    [InlineData(1.53, 0.29, 0.03, 0)]
    [InlineData(2.24, 0.48, 0.18, 0.01)]
    [InlineData(0.75, 0.42, 0.1, 0.005)]
    public void ASteadySwingOfThreeHarmonicsIsNoReading(double hz, double second, double third, double fading)
    {
        (double, double) Swing(double t)
        {
            var turn = 2 * Math.PI * hz * t;
            var light = 0.008 * Math.Exp(-fading * t) * (Math.Sin(turn) + (second * Math.Sin((2 * turn) + 3.5)) + (third * Math.Sin((3 * turn) + 1)));
            return (light, 0.65 * light);
        }

        var heard = Heard.Of(100, new Finger { Seconds = 60, PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004, Movement = Swing }.Samples());
        Assert.Empty(heard.Readings);
        Assert.DoesNotContain(heard.Usable, s => s.SecondIndex > 5);
    }

    // What bends the light of one emitter adds a second harmonic to it alone, which is taken away like mains light.
    [Fact]
    public void ASteadySwingThatTheLightsShowDifferentlyIsNoReading()
    {
        static (double, double) Swing(double t)
        {
            var turn = 2 * Math.PI * 1.5 * t;
            var wave = Math.Sin(turn) + (0.1 * Math.Sin((2 * turn) + 3.5)) + (0.03 * Math.Sin((3 * turn) + 1));
            return (0.01 * wave, 0.01 * ((1.14 * wave) + (0.1 * wave * wave)));
        }

        var heard = Heard.Of(100, new Finger { Seconds = 40, PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004, Movement = Swing }.Samples());
        Assert.Empty(heard.Readings);
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

    // The finger that was alive has gone, and the clip was put on something else with an R like its own.
    [Fact]
    public void WhatIsPutOnAfterAFingerHasToShowThatItIsAlive()
    {
        static (double, double) LikeTheFinger(double light) => (light, 0.52 * light);
        var finger = new Finger { Seconds = 20 };
        var swing = new Finger { Seconds = 40, PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004, Movement = t => LikeTheFinger(Swing(t, 1.33, 0.25, 3.5).Infrared) };
        var heard = Heard.Of(100, [.. finger.Samples(), .. (finger with { Seconds = 4 }).Air(), .. swing.Samples()]);
        Assert.Contains(heard.Readings, r => r.SecondIndex < 20);
        Assert.DoesNotContain(heard.Readings, r => r.SecondIndex > 20);
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

    // The step that a finger leaves when it comes on has rises of its own.
    [Theory]
    [InlineData(10, 97.3)]
    [InlineData(4, 40)]
    [InlineData(6, 72)]
    public void AFingerThatComesBackHasItsOwnBeatsOnly(ulong seed, double pulsePerMinute)
    {
        var scenario = new Scenario
        {
            Seed = seed,
            RateHz = 200,
            Pulse = Track.Constant(pulsePerMinute),
            Noise = 9.5e-5,
            Episodes = [new FingerOffEpisode(20, 40, 0.03)],
        };
        var told = Of(scenario).Usable.Where(s => s.SecondIndex > 40 && s.PulseRatePerMinute is not null).ToArray();
        Assert.NotEmpty(told);
        Assert.All(told, s => Assert.InRange(s.PulseRatePerMinute!.Value, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
    }

    // The second bell lies at a share of the beat: in a slow pulse later than any valve closes.
    [Theory]
    [InlineData(38, 0.3)]
    [InlineData(41, 0.45)]
    [InlineData(44, 0.6)]
    [InlineData(37, 0.36)]
    [InlineData(37, 0.59)]
    [InlineData(38.3, 0.61)]
    public void ALateSecondWaveOfASlowPulseIsNoBeat(double pulsePerMinute, double secondWave)
    {
        var heard = Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave });
        Assert.InRange(heard.Readings.First().SecondIndex, 0, StartSeconds);
        Assert.All(heard.Usable.Where(s => s.SecondIndex >= StartSeconds), s => Assert.InRange(s.PulseRatePerMinute ?? pulsePerMinute, 0.95 * pulsePerMinute, 1.05 * pulsePerMinute));
    }

    // What repeats is two beats long, up to two seconds, and the full one has a strong second wave where the weak one begins.
    [Theory]
    [InlineData(64, 0.587)]
    [InlineData(66, 0.36)]
    [InlineData(87, 0.47)]
    [InlineData(97.5, 0.05)]
    public void BigeminyOfAnyShapeIsReadAndNotHalved(double pulsePerMinute, double secondWave)
    {
        var heard = Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave, Rhythm = Rhythm.Bigeminy });
        var settled = heard.Seconds.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.True(settled.Count(s => s.IsUsable) >= 0.9 * settled.Length);
        Assert.All(settled, s => Assert.InRange(s.Usable?.PulseRatePerMinute ?? pulsePerMinute, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
    }

    // The early beat rises from the second wave of the one before and may not show; the pause behind it does.
    [Theory]
    [InlineData(93.5, 0.5)]
    [InlineData(70, 0.61)]
    public void NoRateIsToldWhereAPauseMayHideAnEarlyBeat(double pulsePerMinute, double secondWave)
    {
        var heard = Of(new() { Pulse = Track.Constant(pulsePerMinute), SecondWave = secondWave, Rhythm = Rhythm.Ectopic });
        var told = heard.Usable.Where(s => s.SecondIndex >= StartSeconds && s.PulseRatePerMinute is not null).ToArray();
        var right = told.Count(s => Math.Abs(s.PulseRatePerMinute!.Value - pulsePerMinute) <= 5);
        Assert.True(right >= 9 && right >= 0.9 * told.Length, string.Join(' ', told.Select(s => $"{s.PulseRatePerMinute:F1}")));
    }

    // What repeats every 1.67 s has a beat in each period; second waves that look like beats now and then make others of it.
    [Theory]
    [InlineData(0.7, 2)]
    [InlineData(0.9, 1)]
    public void NoRateIsToldThatThePeriodContradicts(double secondWave, ulong seed)
    {
        var scenario = new Scenario { Seed = seed, RateHz = 50, Pulse = Track.Constant(36), SecondWave = secondWave, Rhythm = Rhythm.Respiratory };
        var heard = Of(scenario).Usable.Where(s => s.SecondIndex >= StartSeconds).ToArray();
        Assert.All(heard, s => Assert.InRange(s.PulseRatePerMinute ?? 36, 33, 39));
        Assert.True(heard.Count(s => s.PulseRatePerMinute is not null) >= 0.75 * heard.Length);
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
        Assert.DoesNotContain(Of(scenario).Readings, r => Math.Abs(r.Spo2.Percent - 88.39) > 3);
    }

    [Theory]
    [InlineData(40)]
    [InlineData(75)]
    public void AWarmingFingerIsReadAllTheTime(double pulsePerMinute)
    {
        var heard = Of(new() { Pulse = Track.Constant(pulsePerMinute), Perfusion = Track.Ramp(0.3, 3, 10, 50) });
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= StartSeconds), s => Assert.True(s.IsUsable));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void SomethingThatStirsByChanceIsNoFinger(ulong seed) =>
        Assert.Empty(Of(new() { Seed = seed, Episodes = [new LifelessEpisode(double.NegativeInfinity, double.PositiveInfinity, StirPercent: 0.3)] }).Readings);

    [Fact]
    public void RhythmicMovementManyTimesThePulseIsNotTakenForItHoweverLongItLasts()
    {
        var motion = new MotionEpisode(20, 60, MotionKind.Rhythmic, Size: 20, Hz: 1.3, Ratio: 0.45, Apart: 0);
        var heard = Of(new() { Spo2 = Track.Constant(84), Pulse = Track.Constant(140), Episodes = [motion] });
        Assert.DoesNotContain(heard.Usable, s => Math.Abs(s.Spo2!.Value.Percent - 84) > 3);
    }

    // Bent by movement, or laid out by the beat each with its second wave, a slow pulse seems to beat twice as fast.
    [Theory]
    [InlineData(39.45, 0.861, MotionKind.Rhythmic, 0.697, 0.915, 0.766, 7)]
    [InlineData(37.57, 0.806, MotionKind.Broadband, 0.749, 2.62, 0.636, 20)]
    public void TheSecondWaveOfASlowPulseBesideMovementIsNoBeat(
        double pulsePerMinute, double secondWave, MotionKind kind, double size, double hz, double ratio, ulong seed)
    {
        var heard = Of(new()
        {
            Seed = seed,
            RateHz = 50,
            Pulse = Track.Constant(pulsePerMinute),
            Perfusion = Track.Constant(2),
            Spo2 = Track.Constant(90),
            SecondWave = secondWave,
            RespirationPercent = 0.2,
            BaselinePercent = 0.3,
            Noise = 2e-5,
            Episodes = [new MotionEpisode(20, 60, kind, size, hz, ratio, 0.05)],
        });
        Assert.DoesNotContain(heard.Usable, s => s.PulseRatePerMinute > 1.5 * pulsePerMinute);
        Assert.Contains(heard.Usable, s => s.SecondIndex is > 28 and < 60);
    }

    [Fact]
    public void TheMomentAFingerComesOnIsNoPulse()
    {
        var scenario = new Scenario { Seed = 10, RateHz = 200, Episodes = [new FingerOffEpisode(20, 40, 0.03)] };
        Assert.DoesNotContain(Of(scenario).Usable, s => s.SecondIndex is > 20 and < 42);
    }

    [Fact]
    public void AFingerThatIsPulledHalfOffIsNotTakenForAnother()
    {
        var heard = Of(new() { Spo2 = Track.Constant(80), Episodes = [new HalfOffEpisode(20, 45, Leak: 0.5, RedLeak: 0.8)] });
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
            var heard = Of(new() { Seed = seed, Spo2 = Track.Constant(spo2), Episodes = [new SlipEpisode(20, 50, 0.25 + (0.05 * seed), 0.2 + (0.1 * seed))] });
            held.AddRange(heard.Usable.Where(s => s.SecondIndex is > 20 and < 50).Select(s => s.Spo2!.Value.LowPercent <= spo2 && spo2 <= s.Spo2!.Value.HighPercent));
        }

        Assert.True(held.Count(h => h) >= 0.6 * held.Count, $"{held.Count(h => h)} of {held.Count}");
    }

    // The second wave has a front of its own, and a count that takes it for a beat gets two intervals that differ threefold.
    [Theory]
    [InlineData(0.35, 0.7)]
    [InlineData(0.4, 0.8)]
    public void TheTwoWavesOfASlowPulseAreNotTwoBeats(double delaySeconds, double height)
    {
        const double pulsePerMinute = 37.8;
        double Blood(double t)
        {
            var since = t % (60 / pulsePerMinute);
            return Bell(since - 0.15) + (height * Bell(since - 0.15 - delaySeconds));
        }

        static double Bell(double seconds) => Math.Exp(-0.5 * seconds * seconds / (0.08 * 0.08));
        var heard = Heard.Of(25, new Finger { RateHz = 25, Seconds = 60, Blood = Blood }.Samples());
        Assert.All(heard.Usable, s => Assert.InRange(s.PulseRatePerMinute ?? pulsePerMinute, 0.9 * pulsePerMinute, 1.1 * pulsePerMinute));
    }

    private static Heard Swinging(double hz, double overtone, double phase) =>
        Heard.Of(100, new Finger { PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004, Movement = t => Swing(t, hz, overtone, phase) }.Samples());

    private static (double Infrared, double Red) Swing(double t, double hz, double overtone, double phase)
    {
        var turn = 2 * Math.PI * ((hz * t) + (0.01 * Math.Sin(0.4 * t)));
        var light = 0.01 * (Math.Sin(turn) + (overtone * Math.Sin((2 * turn) + phase)));
        return (light, 0.8 * light);
    }

    private static Heard Of(Scenario scenario)
    {
        var recording = new SimulatedRecording(scenario);
        var heard = new Heard();
        var reader = new FingerReader(recording.Header, CalibrationCurve.TextbookLine, new ReadingOptions());
        foreach (var block in recording.Blocks(1000))
        {
            reader.Read(block, heard);
        }

        reader.Finish(heard);
        return heard;
    }
}
