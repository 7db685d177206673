using PulseStream.Accuracy;
using PulseStream.Accuracy.Statistics;
using Xunit;

namespace PulseStream.Tests.Accuracy;

/// <summary>How often a 95 % interval holds the truth. `benchmarks coverage` prints it for a thousand studies of each size.</summary>
public sealed class IntervalCoverageTests
{
    private const int Studies = 300;

    [Theory]
    [InlineData(10, 1.0, 1.5, 0.90)]
    [InlineData(10, 2.0, 1.0, 0.90)]
    [InlineData(30, 1.0, 1.5, 0.93)]
    [InlineData(30, 2.0, 1.0, 0.93)]
    public void IntervalsHoldTheTruthThoughSubjectsDiffer(int subjects, double between, double within, double least)
    {
        var deviation = Math.Sqrt((between * between) + (within * within));
        var (arms, bias, precision) = (0, 0, 0);
        for (var seed = 0; seed < Studies; seed++)
        {
            var statement = AccuracyStatement.Of(SimulatedStudies.Of(subjects, 20, seed, between: between, within: within), Quantity.Saturation, []);
            arms += statement.ArmsInterval!.Value.Contains(Math.Sqrt((SimulatedStudies.Bias * SimulatedStudies.Bias) + (deviation * deviation))) ? 1 : 0;
            bias += statement.BiasInterval!.Value.Contains(SimulatedStudies.Bias) ? 1 : 0;
            precision += statement.PrecisionInterval!.Value.Contains(deviation) ? 1 : 0;
        }

        // 300 studies tell a share of 0.95 to 0.0126.
        Assert.InRange((double)arms / Studies, least, 0.985);
        Assert.InRange((double)bias / Studies, least, 0.985);
        Assert.InRange((double)precision / Studies, least, 0.985);
    }

    [Fact]
    public void WithOnePairASubjectTheUpperEndIsAtLeastTheTextbooks()
    {
        var pairs = SimulatedStudies.Of(10, 1, 5);
        var statement = AccuracyStatement.Of(pairs, Quantity.Saturation, []);

        var textbook = Math.Sqrt(9 / MathNet.Numerics.Distributions.ChiSquared.InvCDF(9, 0.025)) * statement.All.Precision!.Value;
        Assert.True(statement.PrecisionInterval!.Value.High >= textbook - 1e-9);
    }

    [Fact]
    public void WithoutScatterTheIntervalIsAPoint()
    {
        var statement = AccuracyStatement.Of([new("a", 90, 91), new("a", 80, 81), new("b", 90, 91)], Quantity.Saturation, []);

        Assert.Equal(new(1, 1), statement.ArmsInterval);
        Assert.Equal(new(0, 0), statement.PrecisionInterval);
    }

    [Fact]
    public void TheDifferenceBetweenSkinTonesHoldsTheTruth()
    {
        var held = 0;
        for (var seed = 0; seed < Studies; seed++)
        {
            var pairs = SimulatedStudies.Of(16, 15, seed, subject => subject % 2 == 0 ? ("light", 0.0) : ("dark", 4.0));
            held += GroupDifference.Of(SkinGroup.Of(pairs))!.Interval!.Value.Contains(4.0) ? 1 : 0;
        }

        Assert.InRange((double)held / Studies, 0.92, 0.98);
    }

    [Fact]
    public void TheOrderOfRowsDoesNotMatter()
    {
        var pairs = SimulatedStudies.Of(12, 8, 3);

        var forward = AccuracyStatement.Of(pairs, Quantity.Saturation, []).ArmsInterval!.Value;
        var backward = AccuracyStatement.Of([.. pairs.Reverse()], Quantity.Saturation, []).ArmsInterval!.Value;

        Assert.Equal(forward.Low, backward.Low, 1e-9);
        Assert.Equal(forward.High, backward.High, 1e-9);
    }
}
