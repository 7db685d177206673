using CsCheck;
using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

public sealed class CalibrationCurveTests
{
    // Rounding only.
    private const double Tolerance = 1e-12;

    // The slope is a difference over 2e-4.
    private const double SlopeTolerance = 1e-8;

    // J. G. Webster (ed.), Design of Pulse Oximeters, 1997: SpO2 = 110 − 25 R.
    [Theory]
    [InlineData(0.4, 100)]
    [InlineData(0.5, 97.5)]
    [InlineData(0.6, 95)]
    [InlineData(0.8, 90)]
    [InlineData(1.0, 85)]
    [InlineData(1.2, 80)]
    [InlineData(1.6, 70)]
    [InlineData(2.0, 60)]
    public void TheTextbookLineHasItsPublishedValues(double ratio, double percent)
    {
        Assert.Equal(percent, CalibrationCurve.TextbookLine.PercentAt(ratio), Tolerance * percent);
        Assert.Equal(-25, CalibrationCurve.TextbookLine.SlopeAt(ratio), SlopeTolerance);
    }

    [Fact]
    public void ATableIsLinearBetweenItsPointsAndGoesOnBeyondThem()
    {
        var curve = CalibrationCurve.OfTable("hut-loan", [0.4, 0.8, 1.6], [100, 92, 60], 0.4, 1.6, 2, "invented");
        Assert.Equal([100, 98, 92, 76, 60, 44], new[] { 0.4, 0.5, 0.8, 1.2, 1.6, 2.0 }.Select(r => Math.Round(curve.PercentAt(r), 9)));
        Assert.Equal(-20, curve.SlopeAt(0.6), SlopeTolerance);
        Assert.Equal(-40, curve.SlopeAt(1.2), SlopeTolerance);
    }

    [Fact]
    public void APolynomialIsTheSumOfItsPowers() =>
        Gen.Select(Gen.Double[-50, 150].Array[2, 5], Gen.Double[0.2, 3]).Sample((coefficients, ratio) =>
        {
            var curve = CalibrationCurve.OfPolynomial("any", coefficients, 0.2, 3, null, "invented");
            var sum = coefficients.Select((c, power) => c * Math.Pow(ratio, power)).ToArray();
            return Math.Abs(curve.PercentAt(ratio) - sum.Sum()) <= Tolerance * (1 + sum.Sum(Math.Abs));
        });

    [Fact]
    public void NoCurveWithoutARangeOrWithTooFewPoints()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibrationCurve.OfPolynomial("x", [110], 0, 1, null, "x"));
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibrationCurve.OfPolynomial("x", [110, -25], 1, 1, null, "x"));
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibrationCurve.OfPolynomial("x", [110, -25], double.NaN, 1, null, "x"));
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibrationCurve.OfTable("x", [0.4], [100], 0, 1, null, "x"));
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibrationCurve.OfTable("x", [0.4, 0.6], [100], 0, 1, null, "x"));
        Assert.Throws<ArgumentOutOfRangeException>(() => CalibrationCurve.OfTable("x", [0.4, 0.4], [100, 99], 0, 1, null, "x"));
    }
}
