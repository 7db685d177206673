using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A pulse so weak that what pulls at it hides in its noise.</summary>
public sealed class WeakPulseTests
{
    // Breathing's overtone in a mixture of its own, a third of the pulse: it pulls R by a tenth of what lies between them, 0.7
    // points, while the disagreement that it leaves is less than the noise.
    [Theory]
    [InlineData(80, 0.62)]
    [InlineData(120, 0.68)]
    public void BreathingsOvertonesDoNotPullAWeakPulse(double pulsePerMinute, double hz)
    {
        (double Infrared, double Red) Overtone(double t)
        {
            var light = 1.6e-4 * Math.Sin((2 * Math.PI * hz * t) + Math.Sin(0.5 * t));
            return (light, 0.93 * light);
        }

        var finger = new Finger { Seconds = 60, PulsePerMinute = pulsePerMinute, PerfusionPercent = 0.1, Spo2 = _ => 80, NoisePercent = 0.01, Movement = Overtone };
        var told = Heard.Of(100, finger.Samples()).Usable.Where(s => s.SecondIndex >= 12).Select(s => s.Spo2!.Value.Percent).ToArray();
        Assert.InRange(told.Length, 40, 48);
        Assert.Equal(80, told.Average(), 0.3);
    }

    // The upper waves of a narrow pulse lie where white noise is measured; taken for noise of infrared they would put R up, by half a point and more.
    [Fact]
    public void TheUpperWavesOfAWeakPulseDoNotPullIt()
    {
        double Blood(double t)
        {
            var phase = (1.9 * t) + (0.05 * Math.Sin(0.7 * t));
            return Math.Exp(9 * (Math.Cos(2 * Math.PI * phase) - 1));
        }

        var errors = Enumerable.Range(1, 4)
            .SelectMany(seed => Heard.Of(25, new Finger { RateHz = 25, Seconds = 60, Blood = Blood, PerfusionPercent = 0.25, BreathingPercent = 0.1, Spo2 = _ => 85, Seed = seed }.Samples()).Usable)
            .Where(s => s.SecondIndex >= 12)
            .Select(s => s.Spo2!.Value.Percent - 85)
            .ToArray();
        Assert.InRange(errors.Length, 180, 192);
        Assert.Equal(0, errors.Average(), 0.15);
    }

    // A cuff that is let go: what was a fiftieth of itself for twenty seconds is whole again within two.
    [Theory]
    [InlineData(62)]
    [InlineData(85)]
    public void APulseThatComesBackIsReadAtOnce(double pulsePerMinute)
    {
        // Whole again at 47 s; five seconds are what any disturbance leaves in a window.
        const int again = 52;
        double Share(double t) => t is < 25 or > 47 ? 1 : t < 45 ? 0.02 : Math.Pow(0.02, (47 - t) / 2);
        var finger = new Finger
        {
            Seconds = 70,
            PerfusionPercent = 3,
            NoisePercent = 0.002,
            BreathingPercent = 0.1,
            Blood = t => 0.5 + (Share(t) * (Finger.Volume(t * pulsePerMinute / 60) - 0.5)),
        };
        var heard = Heard.Of(100, finger.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= again), s => Assert.True(s.IsUsable, $"{s.SecondIndex} {heard.ReasonsAt(s.SecondIndex)}"));
        Assert.All(heard.Usable.Where(s => s.SecondIndex >= again), s => Assert.Equal(97, s.Spo2!.Value.Percent, 0.3));
    }
}
