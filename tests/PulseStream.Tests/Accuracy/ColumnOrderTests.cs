using PulseStream.Accuracy;
using Xunit;

namespace PulseStream.Tests.Accuracy;

/// <summary>Swapped columns are warned of where the spread says so; right ones are not.</summary>
public sealed class ColumnOrderTests
{
    private const int Studies = 100;

    [Theory]
    [InlineData("plateaus", 98)]
    [InlineData("plateaus, display", 98)]
    [InlineData("plateaus of one value", 98)]
    [InlineData("scattered", 50)]
    [InlineData("noisy", 95)]
    public void SwappedColumnsAreSeen(string kind, int least) =>
        Assert.InRange(Enumerable.Range(0, Studies).Count(seed => IsWarnedOf(Swapped(Study(kind, seed)))), least, Studies);

    [Theory]
    [InlineData("plateaus")]
    [InlineData("plateaus, display")]
    [InlineData("plateaus of one value")]
    [InlineData("scattered")]
    [InlineData("noisy")]
    [InlineData("reads high where low")]
    [InlineData("reads high where low, display")]
    [InlineData("averages longer than its reference, display")]
    [InlineData("errs by plateau")]
    public void RightColumnsAreNot(string kind) =>
        Assert.InRange(Enumerable.Range(0, Studies).Count(seed => IsWarnedOf(Study(kind, seed))), 0, 4);

    private static bool IsWarnedOf(IReadOnlyList<PairedReading> pairs) =>
        AccuracyStatement.Of(pairs, Quantity.Saturation, []).Warnings.Any(warning => warning.Contains("may be swapped", StringComparison.Ordinal));

    private static PairedReading[] Swapped(PairedReading[] pairs) => [.. pairs.Select(pair => new PairedReading(pair.Subject, pair.Reading, pair.Reference))];

    // Twelve subjects, six plateaus of four pairs each.
    private static PairedReading[] Study(string kind, int seed)
    {
        var chance = new Random(seed);
        double Chance(double deviation) => deviation * SimulatedStudies.Normal(chance);
        var isDisplay = kind.EndsWith("display", StringComparison.Ordinal);
        var scale = kind.StartsWith("reads high", StringComparison.Ordinal) ? 0.94 : 1;
        var (ofReference, ofPlateau, ofReading) = kind switch
        {
            "scattered" => (0.0, 0.0, 2.5),
            "noisy" => (0.4, 0.0, 3.0),
            "plateaus of one value" => (0.0, 0.3, 1.2),
            "errs by plateau" => (0.5, 1.5, 0.4),
            "averages longer than its reference, display" => (0.6, 1.5, 0.2),
            _ => (0.4, 0.5, 1.3),
        };
        return
        [
            .. Enumerable.Range(0, 12).SelectMany(subject =>
            {
                var own = Chance(1);
                return Enumerable.Range(0, 6).SelectMany(plateau =>
                {
                    var (level, error) = (97 - (4.8 * plateau) + Chance(0.8), Chance(ofPlateau));
                    return Enumerable.Range(0, 4).Select(_ =>
                    {
                        var truth = kind == "scattered" ? 70 + (30 * chance.NextDouble()) : Math.Min(100, level + Chance(ofReference));
                        var shown = Math.Min(100, 100 + (scale * (truth - 100)) + own + error + Chance(ofReading));
                        return new PairedReading($"s{subject:00}", Math.Round(truth, 1), isDisplay ? Math.Round(shown) : Math.Round(shown, 1));
                    }).ToArray();
                });
            }),
        ];
    }
}
