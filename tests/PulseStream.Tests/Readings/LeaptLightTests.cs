using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Light that leapt may be a lamp's; light that moves otherwise is not called one for it.</summary>
public sealed class LeaptLightTests
{
    private const double RateHz = 100;

    // Not as many counts in either channel: all that tells it from a finger half off is that it comes at once, again and again.
    [Fact]
    public void LampsThatAreSwitchedAreNamed()
    {
        double[] levels = [0, 0.12, 0.05, 0.2, 0.08, 0.25, 0.03, 0.15];
        double Level(double t) => t < 20 || t > 32 ? 0 : levels[(int)((t - 20) / 1.5) % levels.Length];
        double Smooth(double t) => Enumerable.Range(0, 10).Average(k => Level(t - (0.01 * k)));
        var heard = Heard.Of(RateHz, new Finger { Seconds = 40 }.Samples().With(RateHz, t => (60_000 * 0.5 * Smooth(t), 80_000 * Smooth(t))));
        var refused = Enumerable.Range(21, 11).Select(second => heard.ReasonsAt(second)).Where(reasons => reasons != Reasons.None).ToArray();
        Assert.InRange(refused.Length, 8, 11);
        Assert.InRange(refused.Count(reasons => reasons.HasFlag(Reasons.AmbientLight)), 0.9 * refused.Length, refused.Length);
    }

    [Theory]
    [InlineData(10, Reasons.Motion, Reasons.Motion | Reasons.AmbientLight)]
    [InlineData(10, Reasons.Misplaced, Reasons.Misplaced | Reasons.AmbientLight)]
    [InlineData(10, Reasons.NoFinger | Reasons.Misplaced, Reasons.NoFinger | Reasons.Misplaced)]
    [InlineData(10, Reasons.Settling, Reasons.Settling)]
    [InlineData(3, Reasons.Motion, Reasons.Motion)]
    public void OnlyALeapBeyondAnyBeatIsALamp(double pulses, Reasons reasons, Reasons expected)
    {
        const double pulseSize = 0.01;
        var leapt = new LeaptLight(new JudgeOptions());
        leapt.See(new() { SecondIndex = 20, Fit = new RatioFit { WindowSeconds = 8, Leap = pulses * pulseSize } }, Math.Log(pulseSize));
        Assert.Equal(expected, leapt.WithLamp(new() { SecondIndex = 26 }, reasons));
        Assert.Equal(reasons, leapt.WithLamp(new() { SecondIndex = 40 }, reasons));
    }

    // A tenth of a second tells that the finger is there; the seconds before it what its blood is.
    [Fact]
    public void ASecondOfWhichAFewTenthsAreLeftIsRead()
    {
        var samples = new Finger { Seconds = 30 }.Samples();
        samples.AsSpan(2015, 80).Clear();
        Assert.Equal(97, Heard.Of(RateHz, samples).Usable.Single(s => s.SecondIndex == 20).Spo2!.Value.Percent, 0.3);
    }
}
