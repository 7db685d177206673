using PulseStream.Accuracy;
using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Statistics;
using PulseStream.Tests.OpenRecordings;
using Xunit;

namespace PulseStream.Tests.Accuracy;

/// <summary>Published data sets against their published answers.</summary>
public sealed class PublishedAnswersTests
{
    // Answers recomputed from the printed data carry six decimals.
    private const double Recomputed = 5e-6;

    [Fact]
    public void PeakFlowOf1986()
    {
        var (all, limits, bias) = Of(Published.PeakFlow);

        Assert.Equal(-2.117647, all.Bias!.Value, Recomputed);
        Assert.Equal(38.765130, all.Precision!.Value, Recomputed);
        Assert.Equal(37.667274, all.Arms!.Value, Recomputed);
        Assert.Equal(-78.097302, limits.Low, Recomputed);
        Assert.Equal(73.862007, limits.High, Recomputed);
        Assert.Equal(-22.048838, bias.Low, Recomputed);
        Assert.Equal(17.813544, bias.High, Recomputed);
    }

    [Fact]
    public void BloodPressureOf1999WithIntervalsOfTheLimits()
    {
        var (all, limits, bias) = Of(Published.BloodPressure);

        Assert.Equal(-16.294118, all.Bias!.Value, Recomputed);
        Assert.Equal(19.610993, all.Precision!.Value, Recomputed);
        Assert.Equal(-54.731663, limits.Low, Recomputed);
        Assert.Equal(22.143428, limits.High, Recomputed);
        Assert.Equal((-20.5, -12.1), (Math.Round(bias.Low, 1), Math.Round(bias.High, 1)));
        Assert.Equal(-61.9891, limits.LowInterval.Low, 5e-5);
        Assert.Equal(-47.4742, limits.LowInterval.High, 5e-5);
        Assert.Equal(14.8860, limits.HighInterval.Low, 5e-5);
        Assert.Equal(29.4009, limits.HighInterval.High, 5e-5);
    }

    [Fact]
    public void TwoObserversOf1999()
    {
        var all = Measures.Of(Published.Observers);

        Assert.Equal(255, all.Count);
        Assert.Equal(-0.08627451, all.Bias!.Value, 5e-9);
        Assert.Equal(2.26067194, all.Precision!.Value, 5e-9);
    }

    [Fact]
    public void RepeatedPairsWhoseTruthVariesOf2007()
    {
        var (all, limits, _) = Of(Published.CardiacOutput);

        Assert.Equal((60, 12), (all.Count, all.Subjects));
        Assert.Equal(0.602167, all.Bias!.Value, Recomputed);
        Assert.Equal(0.961057, all.Precision!.Value, Recomputed);
        Assert.Equal(0.170714, limits.WithinVariance!.Value, Recomputed);
        Assert.Equal(0.810622, limits.BetweenVariance!.Value, Recomputed);
        Assert.Equal(0.990624, Math.Sqrt(limits.TotalVariance), Recomputed);
        Assert.Equal(-1.339457, limits.Low, Recomputed);
        Assert.Equal(2.543790, limits.High, Recomputed);
    }

    [Fact]
    public void SixtyOneChildrenFailEveryLimit()
    {
        var columns = OpenData.Columns(Path.Combine("agreement", "methcomp_ox_co_pulse.csv"));
        PairedReading[] pairs = [.. columns[0].Select((subject, i) => new PairedReading($"{subject}", columns[2][i], columns[3][i]))];

        var statement = AccuracyStatement.Of(pairs, Quantity.Saturation, CriteriaFile.Default);

        Assert.Equal((177, 61), (statement.All.Count, statement.All.Subjects));
        Assert.Equal(-2.477401, statement.All.Bias!.Value, Recomputed);
        Assert.Equal(6.175598, statement.All.Precision!.Value, Recomputed);
        Assert.Equal(6.637775, statement.All.Arms!.Value, Recomputed);
        Assert.Equal(-14.611857, statement.Limits!.Low, Recomputed);
        Assert.Equal(9.657054, statement.Limits.High, Recomputed);
        Assert.Equal([67, 58, 11], statement.Bands.Where(band => band.From >= 70).Select(band => band.Measures.Count));
        var limits = statement.Criteria.Where(judged => judged.Criterion.Measure == CriterionMeasure.Arms).ToArray();
        Assert.Equal([4.0, 3.0, 3.5, 3.5], limits.Select(judged => judged.Limit));
        Assert.All(limits, judged => Assert.Equal(5.652004, judged.Value!.Value, Recomputed));
        Assert.All(limits, judged => Assert.False(judged.IsMet));
    }

    private static (Measures All, LimitsOfAgreement Limits, ConfidenceInterval Bias) Of(PairedReading[] pairs)
    {
        var all = Measures.Of(pairs);
        var rest = all.Precision!.Value * all.Precision.Value * (all.Count - 1) / all.Count;
        Assert.Equal(all.Arms!.Value * all.Arms.Value, (all.Bias!.Value * all.Bias.Value) + rest, 1e-10);
        return (all, LimitsOfAgreement.Of(pairs)!, AccuracyStatement.Of(pairs, Quantity.Saturation, []).BiasInterval!.Value);
    }
}
