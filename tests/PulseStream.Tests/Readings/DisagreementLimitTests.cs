using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>How far the lights may disagree.</summary>
public sealed class DisagreementLimitTests
{
    // As far apart as a known pulse's lights may be, and no further.
    [Theory]
    [InlineData(false, 0.02, false)]
    [InlineData(true, 0.02, true)]
    [InlineData(true, 0.031, false)]
    public void LightsThatDisagreeByARandomWalkMayDisagreeByMore(bool isWandering, double disagreement, bool isBelieved)
    {
        var fit = new RatioFit(8, 0.65, 0.001, disagreement, 0.006, 1e-4, false, 0, 0, false, 0, default, IsWandering: isWandering);
        Assert.Equal(isBelieved, disagreement <= new DisagreementLimit(new()).LargestOf(fit, isKnown: false));
    }
}
