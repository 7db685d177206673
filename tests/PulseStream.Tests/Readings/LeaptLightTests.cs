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
        leapt.See(new() { SecondIndex = 20, Fit = new RatioFit { WindowSeconds = 8, Leap = pulses * pulseSize } }, Math.Log(pulseSize), isBrighter: false);
        Assert.Equal(expected, leapt.WithLamp(new() { SecondIndex = 26 }, reasons));
        Assert.Equal(reasons, leapt.WithLamp(new() { SecondIndex = 40 }, reasons));
    }

    // Nothing of the pulse is in red − R × infrared: however small a leap is beside the pulse, it is one.
    [Fact]
    public void ALeapOfWhatHoldsNoPulseIsALamp()
    {
        var leapt = new LeaptLight(new JudgeOptions());
        leapt.See(new() { SecondIndex = 20, Fit = new RatioFit { WindowSeconds = 8, LeapBesidePulse = 0.004 } }, Math.Log(0.02), isBrighter: false);
        Assert.Equal(Reasons.Motion | Reasons.AmbientLight, leapt.WithLamp(new() { SecondIndex = 26 }, Reasons.Motion));
    }

    [Fact]
    public void WhatLeaptIsALampUntilItHasGoneAndLeftTheWindow()
    {
        var leapt = new LeaptLight(new JudgeOptions());
        leapt.See(new() { SecondIndex = 20, Fit = new RatioFit { WindowSeconds = 8, Leap = 0.1 } }, Math.Log(0.01), isBrighter: true);
        for (var second = 21; second < 60; second++)
        {
            leapt.See(new() { SecondIndex = second }, Math.Log(0.01), isBrighter: second < 40);
        }

        Assert.True(leapt.IsIn(new() { SecondIndex = 46 }));
        Assert.False(leapt.IsIn(new() { SecondIndex = 47 }));
    }

    // It was the finger's going, as far as anything tells.
    [Fact]
    public void WhatLeaptWhileAFingerWentSaysNothingOfTheNext()
    {
        var leapt = new LeaptLight(new JudgeOptions());
        leapt.See(new() { SecondIndex = 20, Fit = new RatioFit { WindowSeconds = 8, Leap = 0.9 } }, Math.Log(0.01), isBrighter: true);
        leapt.Forget();
        Assert.Equal(Reasons.Motion, leapt.WithLamp(new() { SecondIndex = 26 }, Reasons.Motion));
    }

    // Steps of 4 and 8 % under a pulse of 8 %, twice as far in counts to infrared as to red.
    [Fact]
    public void LampsSmallerThanThePulseAreNamed()
    {
        double[] levels = [0.04, 0.08, 0, 0.08, 0.04];
        double Level(double t) => t < 20 || t > 32 ? 0 : levels[(int)((t - 20) / 1.5) % levels.Length];
        double Smooth(double t) => Enumerable.Range(0, 10).Average(k => Level(t - (0.01 * k)));
        var samples = new Finger { Seconds = 40, PerfusionPercent = 8 }.Samples().With(RateHz, t => (40_000 * Smooth(t), 80_000 * Smooth(t)));
        var heard = Heard.Of(RateHz, samples);
        var refused = Enumerable.Range(21, 11).Select(second => heard.ReasonsAt(second)).Where(reasons => reasons != Reasons.None).ToArray();
        Assert.NotEmpty(refused);
        Assert.All(refused, reasons => Assert.True(reasons.HasFlag(Reasons.AmbientLight), $"{reasons}"));
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
