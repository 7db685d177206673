using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>What a movement leaves behind: taller pulses that were believed because it mixed as blood did, and saturation that has changed meanwhile.</summary>
public sealed class AfterMovementTests
{
    private const double RateHz = 100;
    private const double RatioBefore = 0.88;
    private const double Height = 0.007;
    private const double Taller = 0.0098;

    // Infrared's pulse and both lights are after the movement as they were before it: whatever moved R was blood.
    [Theory]
    [InlineData(0.9, 2.5, 1.4, 90)]
    [InlineData(0.9, 1, 1.4, 90)]
    [InlineData(0.88, 2.5, 0.8, 66)]
    public void SaturationThatRoseInAMovementOfBloodsOwnMixtureIsNoSlip(double mixture, double pulses, double hz, double pulsePerMinute)
    {
        const double perfusionPercent = 2;
        static double Spo2(double t) => 88 + Math.Clamp(t - 30, 0, 9);
        (double, double) Movement(double t)
        {
            var phase = (2 * Math.PI * hz * t) + (0.3 * Math.Sin(2 * Math.PI * 0.07 * t));
            var moved = 0.35 * perfusionPercent / 100 * pulses * (AddedLight.Ramp(t, 24, 0.5) - AddedLight.Ramp(t, 60, 0.5))
                * (Math.Sin(phase) + (0.4 * Math.Sin((2 * phase) + 1)));
            return (moved, mixture * moved);
        }

        var heard = Heard.Of(RateHz, new Finger { Seconds = 100, PulsePerMinute = pulsePerMinute, PerfusionPercent = perfusionPercent, Spo2 = Spo2, Movement = Movement }.Samples());
        Assert.All(heard.Seconds.Where(s => s.SecondIndex >= 72), s => Assert.True(s.IsUsable, $"{s.SecondIndex}"));
        Assert.All(heard.Usable.Where(s => s.SecondIndex >= 72), s => Assert.Equal(97, s.Spo2!.Value.Percent, 0.5));
    }

    // Light that came past red alone for R to fall so far would have brightened red by as much, and any that came past infrared would have shrunk its pulse.
    [Theory]
    [InlineData(5, 1, 1, false)]
    [InlineData(5, 1.02, 0.98, false)]
    [InlineData(5, 1, 1.1, true)]
    [InlineData(5, 1.1, 1, true)]
    [InlineData(4, 1, 1, true)]
    public void AnInfraredPulseThatIsAsItWasBeforeInTheSameLightHasNotSlipped(int before, double infrared, double red, bool isSlip)
    {
        var (light, watch) = Watching(before);
        Assert.Equal(isSlip, IsSlipping(light, watch, At(0.52, Height, infrared, red)));
    }

    // The seconds before the movement are no longer remembered one day, and those within it still are.
    [Fact]
    public void WhatHadSomethingElseInItOnceIsNotComparedWithAgain()
    {
        var (light, watch) = Watching(before: 20);
        for (var k = 0; k < 40; k++)
        {
            var later = At(0.52, Height);
            Assert.False(IsSlipping(light, watch, later));
            watch.Remember(later);
        }
    }

    // A window that is still short tells the pulse smaller than it is; a longer one that tells it as before takes the slip back.
    [Fact]
    public void ASlipIsTakenBackWhenThePulseTurnsOutToBeAsBefore()
    {
        var (light, watch) = Watching(before: 5);
        Assert.True(IsSlipping(light, watch, At(0.52, 0.85 * Height)));
        Assert.False(IsSlipping(light, watch, At(0.52, 0.95 * Height)));
    }

    // Too uncertain to be told, a pulse three errors away from the calm one tells all the same that what comes near it by chance is not the calm one's.
    [Theory]
    [InlineData(0.2, 0.06, Reasons.Motion)]
    [InlineData(0.2, 0.08, Reasons.None)]
    [InlineData(0.07, 0.01, Reasons.None)]
    public void AnUncertainSeparatedPulseThatWentTooFarIsRemembered(double distance, double error, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(RatioBefore, Height);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var far = At(RatioBefore + distance, Height);
        calm.See(far with { SecondIndex = 11, Fit = far.Fit with { IsSeparated = true, StandardError = error } });
        var near = first with { SecondIndex = 12, Fit = first.Fit with { IsSeparated = true } };
        calm.See(near);
        Assert.Equal(expected, calm.ReasonsOf(near));
    }

    private static (CalmLight Light, SlipWatch Watch) Watching(int before)
    {
        var light = new CalmLight(new());
        var watch = new SlipWatch(new(), light);
        for (var k = 0; k < before + 2; k++)
        {
            var second = At(RatioBefore, k < before ? Height : Taller);
            light.See(second);
            watch.Remember(second);
        }

        return (light, watch);
    }

    private static bool IsSlipping(CalmLight light, SlipWatch watch, in SignalSecond second)
    {
        for (var k = 0; k < second.Fit.WindowSeconds; k++)
        {
            light.See(second);
        }

        return watch.Sees(second);
    }

    private static SignalSecond At(double ratio, double height, double infrared = 1, double red = 1)
    {
        var light = new SecondLight(0, 0, 80_000 * infrared, 60_000 * red, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var fit = new RatioFit(8, ratio, 0.01, 0, height, 1e-4, false, 0, 0, false, 0, default);
        var pulse = new WindowPulse(9, 72, 0, 0.01, 0.97, 60 / 72.0, 0.99, 1, 0.5, 0.2, double.NaN, double.NaN, 2, 2);
        return new(10, light, fit, pulse, false);
    }
}
