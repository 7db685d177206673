using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>The band-pass against SciPy's <c>butter</c> and <c>sosfilt</c>; source in tests/vectors/scipy/SOURCE.md.</summary>
public sealed class BandPassAgainstScipyTests
{
    private const double LowHz = 0.5;
    private const double HighHz = 8;

    // Rounding of a dozen operations and of the other order in which roots are multiplied.
    private const double CoefficientTolerance = 1e-12;

    // Poles near the unit circle multiply what the last digit of a coefficient changes.
    private const double OutputTolerance = 1e-12;

    // A settled state of 10 whose rounding the same poles multiply.
    private const double SettledTolerance = 1e-9;

    public static IEnumerable<TheoryDataRow<int, double>> Designs =>
        Vectors.Rows("scipy", "coefficients.csv")
            .Select(row => (Order: int.Parse(row[0]), Rate: double.Parse(row[1])))
            .Distinct()
            .Select(design => new TheoryDataRow<int, double>(design.Order, design.Rate));

    [Theory]
    [MemberData(nameof(Designs))]
    public void CoefficientsAreThoseOfSciPy(int order, double rateHz)
    {
        var expected = Expected(order, rateHz);
        var found = ButterworthDesign.BandPass(order, LowHz, HighHz, rateHz);
        Assert.Equal(order, found.Length);
        for (var i = 0; i < order; i++)
        {
            Near(expected[i].B0, found[i].B0);
            Near(expected[i].B1, found[i].B1);
            Near(expected[i].B2, found[i].B2);
            Near(expected[i].A1, found[i].A1);
            Near(expected[i].A2, found[i].A2);
        }
    }

    [Theory]
    [InlineData(1, 25, 1)]
    [InlineData(2, 100, 2)]
    [InlineData(3, 62.5, 3)]
    [InlineData(4, 500, 4)]
    public void SectionsOfSciPyGiveItsOutputToTheLastBit(int order, double rateHz, int column) =>
        Assert.Equal(Column(column), Outputs(Expected(order, rateHz)));

    [Theory]
    [InlineData(1, 25, 1)]
    [InlineData(2, 100, 2)]
    [InlineData(3, 62.5, 3)]
    [InlineData(4, 500, 4)]
    public void OwnSectionsGiveTheOutputOfSciPy(int order, double rateHz, int column)
    {
        var expected = Column(column);
        var found = Outputs(ButterworthDesign.BandPass(order, LowHz, HighHz, rateHz));
        Assert.All(expected.Zip(found), pair => Assert.Equal(pair.First, pair.Second, OutputTolerance));
    }

    [Theory]
    [MemberData(nameof(Designs))]
    public void AConstantThatHasLastedForEverComesOutAsNothing(int order, double rateHz)
    {
        var chain = new SectionChain(ButterworthDesign.BandPass(order, LowHz, HighHz, rateHz));
        chain.SettleAt(10);
        Assert.All(Enumerable.Repeat(10.0, 200), x => Assert.Equal(0, chain.Step(x), SettledTolerance));
    }

    [Theory]
    [InlineData(0, 0.5, 8)]
    [InlineData(2, 0, 8)]
    [InlineData(2, 8, 0.5)]
    [InlineData(2, 0.5, 50)]
    [InlineData(2, double.NaN, 8)]
    public void NoBandThatARateOf100HzCannotHold(int order, double lowHz, double highHz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => ButterworthDesign.BandPass(order, lowHz, highHz, 100));

    private static SecondOrderSection[] Expected(int order, double rateHz) =>
        [.. Vectors.Rows("scipy", "coefficients.csv")
            .Where(row => int.Parse(row[0]) == order && double.Parse(row[1]) == rateHz)
            .Select(row => row.Skip(3).Select(double.Parse).ToArray())
            .Select(c => new SecondOrderSection(c[0], c[1], c[2], c[3], c[4]))];

    private static double[] Column(int column) =>
        [.. Vectors.Rows("scipy", "output.csv").Select(row => double.Parse(row[column]))];

    private static double[] Outputs(SecondOrderSection[] sections)
    {
        var chain = new SectionChain(sections);
        return [.. Column(0).Select(chain.Step)];
    }

    private static void Near(double expected, double found) =>
        Assert.Equal(expected, found, CoefficientTolerance * Math.Abs(expected));
}
