using MathNet.Numerics;
using PulseStream.Accuracy.Statistics;
using Xunit;
using Reference = MathNet.Numerics.Distributions.StudentT;

namespace PulseStream.Tests.Accuracy;

/// <summary>Quantiles and lines against an independent library.</summary>
public sealed class AgainstMathNetTests
{
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4.7)]
    [InlineData(9)]
    [InlineData(16)]
    [InlineData(84)]
    [InlineData(2000)]
    public void QuantilesOfStudentsT(double degreesOfFreedom)
    {
        foreach (var share in (double[])[0.5, 0.6, 0.9, 0.975, 0.999])
        {
            var expected = Reference.InvCDF(0, 1, degreesOfFreedom, share);
            Assert.Equal(expected, StudentT.Quantile(share, degreesOfFreedom), 1e-7 * Math.Max(1, expected));
        }
    }

    [Theory]
    [InlineData(0.7)]
    [InlineData(1)]
    [InlineData(9)]
    [InlineData(30.5)]
    [InlineData(5000)]
    public void QuantilesOfChiSquare(double degreesOfFreedom)
    {
        foreach (var share in (double[])[0.005, 0.025, 0.2, 0.5])
        {
            var expected = MathNet.Numerics.Distributions.ChiSquared.InvCDF(degreesOfFreedom, share);
            Assert.Equal(expected, ChiSquare.Quantile(share, degreesOfFreedom), 1e-7 * Math.Max(1, expected));
        }
    }

    [Fact]
    public void TheLineOfTheError()
    {
        var pairs = SimulatedStudies.Of(12, 20, 1);

        var line = ErrorRegression.Of(pairs, pair => pair.Reference)!;

        var (intercept, slope) = Fit.Line([.. pairs.Select(pair => pair.Reference)], [.. pairs.Select(pair => pair.Error)]);
        Assert.Equal(intercept, line.Intercept, 1e-8);
        Assert.Equal(slope, line.Slope, 1e-10);
        Assert.True(line.SlopeInterval!.Value.Contains(slope));
    }
}
