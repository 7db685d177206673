using PulseStream.Accuracy.Tables;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Calibration;

/// <summary>Reads pairs of ratio and reference: columns `subject`, `reference`, `ratio`.</summary>
public static class RatioTable
{
    // Whatever is larger is a slip: blood without any oxygen has an R below 5 at the wavelengths in use.
    private const double LargestRatio = 10;

    /// <summary>Reads a table.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <param name="say">Hears of columns that are ignored.</param>
    /// <exception cref="BadInputException">It is no such table or a value cannot be meant.</exception>
    public static IReadOnlyList<RatioPair> Read(ReadOnlyMemory<byte> utf8, string place, Action<string> say) =>
    [
        .. PairTable.Open(utf8, place, "ratio", say).Rows
            .Select(row => new RatioPair(row.Text("subject"), row.Number("reference", 0, 100), row.Number("ratio", 0, LargestRatio))),
    ];
}
