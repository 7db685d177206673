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
    [InlineData(5, 1.15, Reasons.None)]
    [InlineData(5, 1.25, Reasons.Motion)]
    [InlineData(30, 1.15, Reasons.None)]
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

    private static SignalSecond At(long second, double ratio, bool isSeparated, int lines = 0)
    {
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var fit = new RatioFit(8, ratio, 0.01, 0, 0.007, 1e-4, false, 0, lines, false, 0, default, isSeparated);
        var pulse = new WindowPulse(9, 72, 0, 0.01, 0.97, 60 / 72.0, 0.99, 1, 0.5, 0.2, double.NaN, double.NaN, 2);
        return new(second, light, fit, pulse, false);
    }
}
