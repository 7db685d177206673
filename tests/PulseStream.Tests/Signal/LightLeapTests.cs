using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What leaps and what swings.</summary>
public sealed class LightLeapTests
{
    private const double RateHz = 50;
    private const double Least = 0.01;

    [Theory]
    [InlineData(0.1, 0.05)]
    [InlineData(-0.2, -0.3)]
    public void LightThatComesAtOnceAndStaysLeaps(double infrared, double red) =>
        Assert.Equal(infrared, Of(t => (infrared * Ramp(t, 0.1), red * Ramp(t, 0.1))), 0.02 * Math.Abs(infrared));

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.85)]
    [InlineData(1.3)]
    [InlineData(2.2)]
    [InlineData(5)]
    public void WhatSwingsDoesNotLeap(double hz) =>
        Assert.Equal(0, Of(t => (0.1 * Math.Sin((2 * Math.PI * hz * t) + 1), 0.1 * Math.Sin((2 * Math.PI * hz * t) + 1))));

    // Red may leap by less: only infrared is compared with the pulse.
    [Theory]
    [InlineData(0.04, 0.05)]
    [InlineData(0.06, 0)]
    [InlineData(double.PositiveInfinity, 0)]
    public void ALeapThatNobodyAsksForIsNotTold(double leastInfrared, double expected) =>
        Assert.Equal(expected, Of(t => (0.05 * Ramp(t, 0.1), 0.02 * Ramp(t, 0.1)), leastInfrared), 0.001);

    [Fact]
    public void WhatTakesHalfASecondDoesNotLeap() => Assert.Equal(0, Of(t => (0.1 * Ramp(t, 0.6), 0.1 * Ramp(t, 0.6))));

    [Fact]
    public void LightThatOneChannelHasMoreOfAndTheOtherLessIsNoLamp() => Assert.Equal(0, Of(t => (0.1 * Ramp(t, 0.1), -0.1 * Ramp(t, 0.1))));

    [Fact]
    public void WhatComesBackAtOnceDoesNotLeap() => Assert.Equal(0, Of(t => (0.1 * (Ramp(t, 0.1) - Ramp(t - 0.25, 0.1)), 0.1 * (Ramp(t, 0.1) - Ramp(t - 0.25, 0.1)))));

    // A pulse of 10 %, R = 0.8, and light that adds 3 % to infrared and 2 % to red at once.
    [Theory]
    [InlineData(0.03, 0.02)]
    [InlineData(0.03, 0.06)]
    public void LightThatLeapsUnderAPulseLeapsInWhatHoldsNoneOfIt(double infrared, double red) =>
        Assert.Equal(red - (0.8 * infrared), BesidePulse(t => (infrared * Ramp(t, 0.1, 1.5), red * Ramp(t, 0.1, 1.5))), 0.0005);

    [Fact]
    public void ThePulseItselfDoesNotLeap() => Assert.Equal(0, BesidePulse(_ => (0, 0)));

    // A lamp's light may come to what is already moving as well; but what moves comes to rest for a moment now and then.
    [Theory]
    [InlineData(1.2)]
    [InlineData(1.35)]
    [InlineData(1.5)]
    [InlineData(1.75)]
    [InlineData(2)]
    public void WhatWasNotStillBeforeDoesNotLeapBesideThePulse(double at) =>
        Assert.Equal(0, BesidePulse(t => (0, (0.05 * Ramp(t, 0.1, at)) + MovementUntil(at - 0.4, t))));

    // However late in the second that is.
    [Theory]
    [InlineData(1.2)]
    [InlineData(1.35)]
    [InlineData(1.5)]
    [InlineData(1.75)]
    [InlineData(2)]
    public void WhatHasBeenStillForASecondLeapsBesideThePulse(double at) =>
        Assert.Equal(0.05, BesidePulse(t => (0, (0.05 * Ramp(t, 0.1, at)) + MovementUntil(at - 1.17, t))), 0.0005);

    private static double MovementUntil(double end, double t) => t < end ? 0.02 * Math.Sin(2 * Math.PI * (end - t)) : 0;

    private static double BesidePulse(Func<double, (double Infrared, double Red)> light)
    {
        var pairs = new double[2 * (int)(LightLeap.LookBackBesidePulseSeconds * RateHz)];
        for (var n = 0; n < pairs.Length / 2; n++)
        {
            var pulse = -0.05 * Math.Sign(Math.Sin(2 * Math.PI * 1.3 * n / RateHz));
            var (infrared, red) = light(n / RateHz);
            (pairs[2 * n], pairs[(2 * n) + 1]) = (pulse + infrared, (0.8 * pulse) + red);
        }

        return LightLeap.LargestBesidePulse(pairs, RateHz, 0.8, 0.003);
    }

    // From 0 to 1 within so many seconds about the middle.
    private static double Ramp(double t, double seconds, double at = 0.9) => Math.Clamp(((t - at) / seconds) + 0.5, 0, 1);

    private static double Of(Func<double, (double Infrared, double Red)> light, double leastInfrared = Least)
    {
        var pairs = new double[2 * (int)(LightLeap.LookBackSeconds * RateHz)];
        for (var n = 0; n < pairs.Length / 2; n++)
        {
            (pairs[2 * n], pairs[(2 * n) + 1]) = light(n / RateHz);
        }

        return LightLeap.LargestIn(pairs, RateHz, (leastInfrared, Least));
    }
}
