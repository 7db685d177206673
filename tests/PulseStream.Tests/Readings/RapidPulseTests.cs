using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A pulse as fast as a child's with fever or an adult's at full effort, who breathe fast and deep.</summary>
public sealed class RapidPulseTests
{
    // The first accepted reading of a quiet finger.
    private const int FirstReadingSeconds = 12;
    private const double PercentTolerance = 0.3;

    // The second harmonic of thirty breaths a minute lies above the edge that leaves a pulse of 57 whole.
    [Theory]
    [InlineData(150, 0.52)]
    [InlineData(165, 0.48)]
    [InlineData(180, 0.5)]
    [InlineData(195, 0.55)]
    public void FastBreathingDelaysNoReading(double pulsePerMinute, double breathHz)
    {
        (double Infrared, double Red) Breath(double t)
        {
            var turn = 2 * Math.PI * ((breathHz * t) + (0.1 * Math.Sin(0.5 * t)));
            var light = 0.004 * (Math.Sin(turn) + (0.5 * Math.Sin((2 * turn) + 1)));
            return (light, 0.9 * light);
        }

        var heard = Heard.Of(100, new Finger { PulsePerMinute = pulsePerMinute, PerfusionPercent = 4, Movement = Breath }.Samples());
        Assert.InRange(heard.Readings.First().SecondIndex, 0, FirstReadingSeconds);
        Assert.All(heard.Seconds.Where(s => s.SecondIndex > FirstReadingSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // A narrow throw with a second wave, sampled twenty-five times a second: a third of its waves lies where white noise is measured.
    [Theory]
    [InlineData(172, 0.42)]
    [InlineData(186, 0.2)]
    [InlineData(200, 0.42)]
    public void TheUpperWavesOfANarrowPulseAreNoNoise(double pulsePerMinute, double height)
    {
        double Blood(double t)
        {
            var beats = (pulsePerMinute / 60 * t) + (0.05 * Math.Sin(1.9 * t));
            return Narrow(beats, 0.2, 8) + (height * Narrow(beats, 0.56, 6)) + (0.2 * Narrow(beats, 0.45, 1.2));
        }

        var heard = Heard.Of(25, new Finger { RateHz = 25, Seconds = 40, Blood = Blood, PerfusionPercent = 1, NoisePercent = 0.003, Spo2 = _ => 85 }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex > FirstReadingSeconds), s => Assert.True(s.IsUsable));
        Assert.All(heard.Usable, s => Assert.Equal(85, s.Spo2!.Value.Percent, PercentTolerance));
        Assert.All(heard.Usable, s => Assert.InRange(s.PulseRatePerMinute ?? pulsePerMinute, 0.95 * pulsePerMinute, 1.05 * pulsePerMinute));

        // On a circle, as wide as that of von Mises with this concentration.
        static double Narrow(double beats, double at, double concentration) =>
            Math.Exp(concentration * (Math.Cos(2 * Math.PI * (beats - at)) - 1));
    }

    // Of three beats a second the smoothing leaves a quarter of a third harmonic: what is left of two hundredths would pass for a swing.
    [Theory]
    [InlineData(3.1)]
    [InlineData(3.25)]
    [InlineData(3.4)]
    public void WhatTheSmoothingTookOfTheThirdHarmonicIsMadeGood(double beatsPerSecond)
    {
        double Blood(double t)
        {
            var turn = 2 * Math.PI * ((beatsPerSecond * t) + (0.05 * Math.Sin(1.3 * t)));
            return 0.5 - (0.35 * (Math.Sin(turn) + (0.3 * Math.Sin((2 * turn) + 3.5)) + (0.024 * Math.Sin((3 * turn) + 1))));
        }

        var heard = Heard.Of(100, new Finger { Blood = Blood, PerfusionPercent = 4, BreathingPercent = 0.1 }.Samples());
        Assert.InRange(heard.Readings.First().SecondIndex, 0, FirstReadingSeconds);
        Assert.All(heard.Seconds.Where(s => s.SecondIndex > FirstReadingSeconds), s => Assert.True(s.IsUsable));
    }

    // With the front of a pulse and all else that a pulse has: at 250 a minute it is a fan's or a mill's, and twice its period passes for one.
    [Theory]
    [InlineData(4.05)]
    [InlineData(4.2)]
    [InlineData(4.4)]
    public void EvenBeatsThatAreTooFastForAnyHeartAreNoFinger(double beatsPerSecond)
    {
        double Blood(double t) => Finger.Volume((beatsPerSecond * t) + (0.05 * Math.Sin(1.3 * t)));
        Assert.Empty(Heard.Of(250, new Finger { RateHz = 250, Blood = Blood, PerfusionPercent = 2, BreathingPercent = 0.1 }.Samples()).Readings);
        Assert.DoesNotContain(Heard.Of(100, new Finger { Blood = Blood, PerfusionPercent = 2, BreathingPercent = 0.1 }.Samples()).Usable, s => s.SecondIndex > FirstReadingSeconds);
    }

    [Theory]
    [InlineData(3.1)]
    [InlineData(3.25)]
    [InlineData(3.4)]
    public void AFastSwingOfTwoHarmonicsIsNoFinger(double hz)
    {
        (double, double) Swing(double t)
        {
            var turn = 2 * Math.PI * ((hz * t) + (0.05 * Math.Sin(1.3 * t)));
            var light = 0.01 * (Math.Sin(turn) + (0.3 * Math.Sin((2 * turn) + 3.5)));
            return (light, 0.52 * light);
        }

        Assert.Empty(Heard.Of(100, new Finger { PerfusionPercent = 0, BreathingPercent = 0.1, Movement = Swing }.Samples()).Usable);
    }
}
