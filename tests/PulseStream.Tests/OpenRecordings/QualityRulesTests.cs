using Xunit;

namespace PulseStream.Tests.OpenRecordings;

/// <summary>The reference itself: cases that follow from the text of the rules, worked out by hand.</summary>
public sealed class QualityRulesTests
{
    private const double RateHz = 100;

    // Rounding only.
    private const double Tolerance = 1e-9;

    [Theory]
    [InlineData(12, 0.4, 0.8, 0.8, true)]
    [InlineData(6, 0.8, 1.6, 1.6, false)]
    [InlineData(7, 0.7, 1.4, 1.4, true)]
    [InlineData(30, 0.2, 0.33, 0.33, true)]
    [InlineData(31, 0.2, 0.32, 0.32, false)]
    [InlineData(8, 3.2, 0.8, 0.8, false)]
    [InlineData(12, 0.5, 0.5, 1.0, true)]
    [InlineData(12, 0.5, 0.4, 1.0, false)]
    public void BeatsAreJudgedByNumberGapAndInterval(int count, double first, double interval, double nextInterval, bool arePlausible)
    {
        var beats = new double[count];
        beats[0] = first;
        for (var n = 1; n < count; n++)
        {
            beats[n] = beats[n - 1] + (n % 2 == 1 ? interval : nextInterval);
        }

        Assert.Equal(arePlausible, QualityRules.AreBeatsPlausible(beats));
    }

    [Fact]
    public void EqualBeatsScoreOne()
    {
        var beats = Enumerable.Range(0, 12).Select(n => 0.4 + (0.8 * n)).ToArray();
        double[] window = [.. Enumerable.Range(0, 1000).Select(n => 5 + Math.Sin(2 * Math.PI * n / 80))];
        Assert.Equal(1, QualityRules.Score(window, RateHz, beats), Tolerance);
        Assert.True(QualityRules.Accept(window, RateHz, beats, QualityRules.LeastPlethScore));
    }

    [Fact]
    public void BeatsWithoutACommonShapeAreRefused()
    {
        var beats = Enumerable.Range(0, 12).Select(n => 0.4 + (0.8 * n)).ToArray();
        var random = new Random(1);
        double[] window = [.. Enumerable.Range(0, 1000).Select(_ => random.NextDouble())];
        Assert.False(QualityRules.Accept(window, RateHz, beats, QualityRules.LeastPlethScore));
    }

    [Fact]
    public void AMissingSampleIsNoAgreement()
    {
        var beats = Enumerable.Range(0, 12).Select(n => 0.4 + (0.8 * n)).ToArray();
        double[] window = [.. Enumerable.Range(0, 1000).Select(n => n == 500 ? double.NaN : Math.Sin(2 * Math.PI * n / 80))];
        Assert.False(QualityRules.Accept(window, RateHz, beats, QualityRules.LeastPlethScore));
    }
}
