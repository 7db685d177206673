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

    // What was steady while it was large is not alive when it has faded into the noise.
    [Fact]
    public void ASwingThatFadesIntoNoiseIsNoReading()
    {
        (double, double) Swing(double t)
        {
            var light = 0.004 * Wave(t, 0.943, 0.3, 1.1, 0.2) * Math.Exp(-t / 30);
            return (light + Drift(t), (1.1 * light) + Drift(t));
        }

        var heard = Heard.Of(25, (Empty with { RateHz = 25, Movement = Swing }).Samples());
        Assert.Empty(heard.Readings);
        Assert.InRange(heard.Usable.Count(), 0, 2);
    }

    // So fast that its beats are found at a third of its rate: there it has next to no first harmonic.
    [Theory]
    [InlineData(7.1, 0.02)]
    [InlineData(8.6, 0.02)]
    [InlineData(9.4, 0.03)]
    public void WhatShakesFastIsNoFinger(double hz, double size)
    {
        (double, double) Shake(double t)
        {
            var light = size * (1 + (0.15 * Math.Sin(1.9 * t)) + (0.1 * Math.Sin((3.1 * t) + 1))) * Math.Sin((2 * Math.PI * hz * t) + (0.9 * Math.Sin(0.8 * t)));
            return (light, 1.21 * light);
        }

        for (var seed = 1; seed <= 4; seed++)
        {
            Assert.Empty(Heard.Of(25, (Empty with { RateHz = 25, NoisePercent = 0.01, Seed = seed, Movement = Shake }).Samples()).Readings);
        }
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

    private static double Drift(double t) => 0.002 * (Math.Sin(0.19 * t) + Math.Sin((0.27 * t) + 1));
}
