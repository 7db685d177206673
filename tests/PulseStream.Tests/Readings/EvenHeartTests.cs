using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>
/// Hearts in exercise and fever, or paced, keep their rate to a few thousandths, and where little is breathed nothing else moves: the
/// intervals of healthy hearts at 150 a minute scatter by 2 to 4 ms (common practice).
/// </summary>
public sealed class EvenHeartTests
{
    // What a quiet finger's SpO2 may be off in 95 of 100 seconds, points.
    private const double PercentTolerance = 0.3;

    [Theory]
    [InlineData(110, 0.004)]
    [InlineData(130, 0.004)]
    [InlineData(150, 0.005)]
    public void AHeartThatBeatsNearlyEvenlyIsRead(double pulsePerMinute, double jitter)
    {
        var heard = Beating(pulsePerMinute, jitter);
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 12), s => Assert.True(s.IsUsable, $"{s.SecondIndex}"));
        Assert.All(heard.Usable, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
    }

    // Two bells of a beat, the second not far behind the first, have a front of 0.2 to 0.4 in the measure that a swing has none of.
    [Theory]
    [InlineData(95, 0.2)]
    [InlineData(120, 0.2)]
    public void SoIsOneWhoseFrontIsBlunt(double pulsePerMinute, double delaySeconds)
    {
        var scatter = new Random(2);
        var heart = Heart.Of(62, (_, _) => 60 / pulsePerMinute * (1 + (0.008 * (scatter.NextDouble() - 0.5))));
        double Blood(double t) => heart.Fronts.Where(f => Math.Abs(t - f) < 2).Sum(f => Bell(t - f) + (0.5 * Bell(t - f - delaySeconds)));
        static double Bell(double seconds) => Math.Exp(-0.5 * seconds * seconds / (0.06 * 0.06));
        var heard = Heard.Of(100, new Finger { Seconds = 60, BreathingPercent = 0, NoisePercent = 0.004, Blood = Blood }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 12), s => Assert.True(s.IsUsable, $"{s.SecondIndex}"));
    }

    // What turns may lean as far, but smoothly; white noise makes it no less steady.
    [Theory]
    [InlineData(1.8, 0, 0.004)]
    [InlineData(2.5, 0.001, 0.004)]
    [InlineData(2, 0, 0.05)]
    public void AWheelThatLeansAsFarIsNoReading(double hz, double wander, double noisePercent)
    {
        (double, double) Wheel(double t)
        {
            var turn = 2 * Math.PI * ((hz * t) + (wander * Math.Sin(1.3 * t)));
            var light = -0.01 * (Math.Sin(turn) + (0.4 * Math.Sin(2 * turn)) + (0.2 * Math.Sin(3 * turn)) + (0.05 * Math.Sin(4 * turn)));
            return (light, 0.8 * light);
        }

        Assert.Empty(Heard.Of(100, new Finger { Seconds = 60, PerfusionPercent = 0, BreathingPercent = 0, NoisePercent = noisePercent, Movement = Wheel }.Samples()).Readings);
    }

    // The judge's word for what the smoothing leaves of white noise, to a tenth at any rate.
    [Theory]
    [InlineData(50)]
    [InlineData(128)]
    [InlineData(250)]
    public void ASecondHasAsMuchFreedomAsTheSmoothingLeaves(double rateHz)
    {
        var design = new SignalDesign(new(rateHz), new());
        Assert.InRange(design.Kernel.NoiseGain * design.BinRateHz, 0.9 * new LivenessOptions().FreedomPerSecond, 1.1 * new LivenessOptions().FreedomPerSecond);
    }

    private static Heard Beating(double pulsePerMinute, double jitter)
    {
        var scatter = new Random(1);
        var heart = Heart.Of(62, (_, _) => 60 / pulsePerMinute * (1 + (jitter * ((2 * scatter.NextDouble()) - 1) * Math.Sqrt(3))));
        return Heard.Of(100, new Finger { Seconds = 60, BreathingPercent = 0, NoisePercent = 0.004, Blood = heart.BloodAt }.Samples());
    }
}
