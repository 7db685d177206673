using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A pulse told from movement at its own rate can be the movement: then R jumps, and blood does not.</summary>
public sealed class SeparatedJumpTests
{
    private const double CalmRatio = 1;

    [Theory]
    [InlineData(1, 1.05, Reasons.None)]
    [InlineData(1, 1.4, Reasons.Motion)]
    [InlineData(1, 0.8, Reasons.Motion)]
    [InlineData(5, 1.07, Reasons.None)]
    [InlineData(5, 1.25, Reasons.Motion)]
    [InlineData(30, 1.07, Reasons.None)]
    [InlineData(30, 1.09, Reasons.Motion)]
    [InlineData(30, 1.2, Reasons.Motion)]
    [InlineData(5, 1.4, Reasons.Motion)]
    public void ASeparatedPulseFollowsTheLastBelievedOneAsFastAsBloodDoes(int secondsLater, double ratio, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var later = At(10 + secondsLater, ratio, isSeparated: true);
        calm.See(later);
        Assert.Equal(expected, calm.ReasonsOf(later));
    }

    // Each step is one that blood may make; all of them are a finger that slips while it moves.
    [Fact]
    public void ASeparatedPulseCreepsNoFurtherThanTwoPointsFromTheCalmOne()
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        for (var step = 1; step <= 3; step++)
        {
            var later = At(10 + step, CalmRatio + (0.035 * step), isSeparated: true);
            calm.See(later);
            Assert.Equal(step < 3 ? Reasons.None : Reasons.Motion, calm.ReasonsOf(later));
            calm.Tell(later);
        }
    }

    // What stays near the calm pulse once another second did not is what chance left of those that do not: blood may have changed meanwhile.
    [Theory]
    [InlineData(1, Reasons.Motion)]
    [InlineData(4, Reasons.Motion)]
    [InlineData(6, Reasons.None)]
    public void ASeparatedPulseIsNotBelievedSoonAfterOneThatWentTooFar(int secondsLater, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var far = At(20, CalmRatio + 0.1, isSeparated: true);
        calm.See(far);
        Assert.Equal(Reasons.Motion, calm.ReasonsOf(far));
        var near = At(20 + secondsLater, CalmRatio, isSeparated: true);
        calm.See(near);
        Assert.Equal(expected, calm.ReasonsOf(near));
    }

    [Theory]
    [InlineData(1.05, Reasons.None)]
    [InlineData(1.4, Reasons.Motion)]
    public void APulseBesideALineFollowsNoFaster(double ratio, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var later = At(11, ratio, isSeparated: false, lines: 1);
        calm.See(later);
        Assert.Equal(expected, calm.ReasonsOf(later));
    }

    // A finger that slips while it moves has another pulse than the calm one, whether its light brightens or darkens.
    [Theory]
    [InlineData(1, 1, Reasons.None)]
    [InlineData(0.97, 1.02, Reasons.None)]
    [InlineData(0.92, 1, Reasons.Motion)]
    [InlineData(1, 0.92, Reasons.Motion)]
    [InlineData(1.08, 0.99, Reasons.Misplaced | Reasons.Motion)]
    [InlineData(1.08, 1.04, Reasons.Misplaced | Reasons.Motion)]
    public void ASeparatedPulseNeedsTheCalmLight(double infrared, double red, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var later = At(11, CalmRatio, isSeparated: true, infrared: infrared, red: red);
        calm.See(later);
        Assert.Equal(expected, calm.ReasonsOf(later) & ~Reasons.AmbientLight);
    }

    // Beside a line nobody knows how much of the pulse a leak took; what the line was is not known either.
    [Fact]
    public void BrighterLightBesideALineMayBeMovementToo()
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        for (var second = 11; second < 19; second++)
        {
            calm.See(At(second, CalmRatio, isSeparated: false, lines: 1, infrared: 1.3, red: 1.2));
        }

        Assert.Equal(Reasons.Misplaced | Reasons.Motion, calm.ReasonsOf(At(19, CalmRatio, isSeparated: false, lines: 1, infrared: 1.3, red: 1.2)) & ~Reasons.AmbientLight);
    }

    // What is faster than any pulse passes for noise, and pulls R its own way: blood's goes there more slowly, and without noise.
    [Theory]
    [InlineData(1, 0.12, Reasons.None)]
    [InlineData(3, 0.12, Reasons.AmbientLight | Reasons.Motion)]
    [InlineData(3, 0.05, Reasons.None)]
    public void RThatJumpsWithNewNoiseIsNotBloods(double noise, double jump, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var later = At(11, CalmRatio + jump, isSeparated: false);
        later = later with { Fit = later.Fit with { NoiseSize = noise * first.Fit.NoiseSize } };
        calm.See(later);
        Assert.Equal(noise > 2, calm.HasNewNoise(later));
        Assert.Equal(expected, calm.ReasonsOf(later));
    }

    // Light that dims step by step has more noise with each, and none of it is new.
    [Fact]
    public void NoiseThatGrowsWithTheBelievedSecondsIsNotNew()
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var noise = 0.0;
        for (var second = 10; second < 20; second++)
        {
            var believed = At(second, CalmRatio, isSeparated: false);
            noise = (1 + (0.2 * (second - 10))) * believed.Fit.NoiseSize;
            believed = believed with { Fit = believed.Fit with { NoiseSize = noise } };
            calm.See(believed);
            calm.Tell(believed);
            calm.Remember(believed);
        }

        var later = At(20, CalmRatio, isSeparated: false);
        Assert.False(calm.HasNewNoise(later with { Fit = later.Fit with { NoiseSize = 1.5 * noise } }));
        Assert.True(calm.HasNewNoise(later with { Fit = later.Fit with { NoiseSize = 2.5 * noise } }));
    }

    // The light is back, the window that the pulse is read from is still full of the slip.
    [Theory]
    [InlineData(true, Reasons.Motion)]
    [InlineData(false, Reasons.Misplaced)]
    public void AWindowThatHoldsOtherLightIsNotReadThoughThatHasGone(bool isSeparated, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        for (var second = 11; second < 18; second++)
        {
            var slipped = At(second, CalmRatio - 0.05, isSeparated: false, infrared: 1.15, red: 1.3);
            slipped = slipped with { Fit = slipped.Fit with { PulseSize = 0.005 } };
            calm.See(slipped);
            Assert.Equal(Reasons.Misplaced, calm.ReasonsOf(slipped) & ~Reasons.AmbientLight);
        }

        var back = At(18, CalmRatio - 0.05, isSeparated);
        back = back with { Fit = back.Fit with { PulseSize = 0.005 } };
        calm.See(back);
        Assert.Equal(expected, calm.ReasonsOf(back) & ~Reasons.AmbientLight & ~(isSeparated ? Reasons.None : Reasons.Motion));
    }

    // Veins that beat with the heart leave the lights nearly in agreement; lights that agree are blood's, and so is what has lasted.
    [Theory]
    [InlineData(11, 0.02, 0.009, Reasons.Motion)]
    [InlineData(11, 0.02, 0.007, Reasons.None)]
    [InlineData(11, 0.005, 0.009, Reasons.None)]
    [InlineData(50, 0.02, 0.009, Reasons.None)]
    public void ARatioThatJumpsInLightsThatNearlyAgreeIsMovement(long second, double disagreement, double size, Reasons expected)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var later = At(second, CalmRatio + 0.2, isSeparated: false);
        later = later with { Fit = later.Fit with { Disagreement = disagreement, PulseSize = size } };
        calm.See(later);
        Assert.Equal(expected, calm.ReasonsOf(later));
    }

    // Something beat with the pulse for some seconds and made it taller; without it the pulse is as it was before, and has not shrunk.
    [Theory]
    [InlineData(5, false)]
    [InlineData(0, true)]
    public void APulseThatIsAsItWasBeforeHasNotSlipped(int before, bool isSlip)
    {
        var (light, watch) = Watching();
        var small = At(10, CalmRatio, isSeparated: false, infrared: 1.1);
        var tall = small with { Light = At(10, CalmRatio, isSeparated: false).Light, Fit = small.Fit with { PulseSize = 0.0095, Ratio = 1.16 } };
        for (var k = 0; k < before; k++)
        {
            Remember(light, watch, small);
        }

        Remember(light, watch, tall);
        Remember(light, watch, tall);
        for (var k = 0; k < small.Fit.WindowSeconds; k++)
        {
            light.See(small);
        }

        Assert.Equal(isSlip, watch.Sees(small));
    }

    // Vessels that close while blood loses oxygen shrink the pulse and move R as a slip does. What leaks past takes the place of what
    // the finger lets through in one light by chance, and not in both.
    [Theory]
    [InlineData(1, 1, 0.0095, false)]
    [InlineData(1.01, 0.99, 0.0095, false)]
    [InlineData(1.05, 1, 0.0095, true)]
    [InlineData(1, 0.95, 0.0095, true)]
    [InlineData(1, 1, 0.012, true)]
    public void NothingHasSlippedWhereNeitherLightHasMovedUnlessThePulseHasLostMuch(double infrared, double red, double tallSize, bool isSlip)
    {
        var (light, watch) = Watching();
        var small = At(10, CalmRatio, isSeparated: false, infrared: infrared, red: red);
        var tall = At(9, 1.16, isSeparated: false);
        Remember(light, watch, tall with { Fit = tall.Fit with { PulseSize = tallSize } });
        for (var k = 0; k < small.Fit.WindowSeconds; k++)
        {
            light.See(small);
        }

        Assert.Equal(isSlip, watch.Sees(small));
    }

    // Seconds beside a line tell no height: nothing is known that a movement could be told by.
    [Fact]
    public void ASeparatedPulseWithoutACalmFingerIsMovement()
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var first = At(10, CalmRatio, isSeparated: false, lines: 1);
        calm.See(first);
        calm.Tell(first);
        calm.Remember(first);
        var later = At(11, CalmRatio, isSeparated: true);
        calm.See(later);
        Assert.Equal(Reasons.Motion, calm.ReasonsOf(later));
    }

    private static (CalmLight Light, SlipWatch Watch) Watching()
    {
        var light = new CalmLight(new());
        return (light, new(new(), light));
    }

    private static void Remember(CalmLight light, SlipWatch watch, in SignalSecond second)
    {
        light.See(second);
        watch.Remember(second);
    }

    private static SignalSecond At(long second, double ratio, bool isSeparated, int lines = 0, double infrared = 1, double red = 1)
    {
        var light = new SecondLight(0, 0, 80_000 * infrared, 60_000 * red, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var fit = new RatioFit(8, ratio, 0.01, 0, 0.007, 1e-4, false, 0, lines, false, 0, default, isSeparated);
        var pulse = new WindowPulse(9, 72, 0, 0.01, 0.97, 60 / 72.0, 0.99, 1, 0.5, 0.2, double.NaN, double.NaN, 2, 2);
        return new(second, light, fit, pulse, false);
    }
}
