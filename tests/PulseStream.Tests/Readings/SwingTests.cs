using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>What swings in the clip, with overtones of its own, is no finger, and takes no finger's place.</summary>
public sealed class SwingTests
{
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

    private static Heard Swinging(double hz, double overtone, double phase) =>
        Heard.Of(100, new Finger { PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = 0.004, Movement = t => Swing(t, hz, overtone, phase) }.Samples());

    private static (double Infrared, double Red) Swing(double t, double hz, double overtone, double phase)
    {
        var turn = 2 * Math.PI * ((hz * t) + (0.01 * Math.Sin(0.4 * t)));
        var light = 0.01 * (Math.Sin(turn) + (overtone * Math.Sin((2 * turn) + phase)));
        return (light, 0.8 * light);
    }
}
