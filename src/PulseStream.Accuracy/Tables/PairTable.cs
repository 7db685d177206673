using PulseStream.Samples;

namespace PulseStream.Accuracy.Tables;

/// <summary>Reads pairs of reading and reference.</summary>
public static class PairTable
{
    private static readonly string[] Optional = ["skin_tone", "site", "device"];

    /// <summary>Pairs for a statement of accuracy: columns `subject`, `reference`, `reading`, optionally `skin_tone`, `site`, `device`.</summary>
    /// <param name="utf8">The file's bytes.</param>
    /// <param name="place">The file's name, for messages.</param>
    /// <param name="quantity">What was compared.</param>
    /// <param name="say">Hears of columns that are ignored.</param>
    /// <exception cref="BadInputException">It is no such table, a value cannot be meant, or there are too few pairs or subjects.</exception>
    public static IReadOnlyList<PairedReading> Read(ReadOnlyMemory<byte> utf8, string place, Quantity quantity, Action<string> say)
    {
        var table = Open(utf8, place, "reading", say);
        var scale = QuantityScale.Of(quantity);
        PairedReading[] pairs =
        [
            .. table.Rows.Select(row => new PairedReading(
                row.Text("subject"), row.Number("reference", scale.Lowest, scale.Highest), row.Number("reading", scale.Lowest, scale.Highest))
            {
                SkinTone = row.TextOrNull("skin_tone"),
                Site = row.TextOrNull("site"),
                Device = row.TextOrNull("device"),
            }),
        ];
        Check(place, pairs.Length, pairs.Select(pair => pair.Subject).Distinct(StringComparer.Ordinal).Count());
        return pairs;
    }

    internal static TextTable Open(ReadOnlyMemory<byte> utf8, string place, string value, Action<string> say)
    {
        var table = TextTable.Parse(utf8, place, ["subject", "reference", value], Optional);
        if (table.Unknown.Length > 0)
        {
            say($"{place}: columns not known here are ignored: {table.Unknown}.");
        }

        return table;
    }

    private static void Check(string place, int pairs, int subjects)
    {
        if (pairs < 2)
        {
            throw new BadInputException(place, "it holds one pair, and scatter needs two or more", "Add pairs of several subjects and run again");
        }

        if (subjects < 2)
        {
            throw new BadInputException(place, $"its {pairs} pairs are all of one subject, and an interval needs two or more", "Add pairs of other subjects, or correct the column 'subject', and run again");
        }
    }
}
