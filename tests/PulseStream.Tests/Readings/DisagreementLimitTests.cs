using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>How far the lights may disagree beside a line that was taken away.</summary>
public sealed class DisagreementLimitTests
{
    // A hand that taps and trembles: what is left beside the trembling is as tall as hardly any pulse.
    [Theory]
    [InlineData(0.045, true, false, false)]
    [InlineData(0.045, true, true, true)]
    [InlineData(0.045, false, false, true)]
    [InlineData(0.02, true, false, true)]
    public void ATallWaveThatWasNeverSeenAloneIsNoPulseBesideALineThatDrifts(double pulseSize, bool isWideLine, bool isKnown, bool mayBe)
    {
        var fit = new RatioFit(8, 0.65, 0.001, 0, pulseSize, 1e-4, false, 0, 1, true, 0.08, default, LineHz: 4.1, LinesExplain: 1, IsOneLine: true, IsPureLine: true, IsWideLine: isWideLine);
        Assert.Equal(mayBe, new DisagreementLimit(new()).LargestOf(fit, isKnown) >= 0);
    }

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
