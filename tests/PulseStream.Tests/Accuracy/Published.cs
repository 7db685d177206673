using System.Globalization;
using PulseStream.Accuracy;
using PulseStream.Tests.Cli;

namespace PulseStream.Tests.Accuracy;

/// <summary>Pairs of published studies.</summary>
internal static class Published
{
    public static PairedReading[] PeakFlow => [.. Rows("peak-flow-1986.csv").Where(row => row["repl"] == 1).Select(row => Pair(row, "mini", "wright"))];

    public static PairedReading[] BloodPressure => [.. Rows("blood-pressure-1999.csv").Select(row => Pair(row, "s1", "j1"))];

    public static PairedReading[] Observers => [.. Rows("blood-pressure-1999.csv").SelectMany(row => Enumerable.Range(1, 3).Select(i => Pair(row, $"j{i}", $"r{i}")))];

    public static PairedReading[] CardiacOutput => [.. Rows("cardiac-output-1999.csv").Select(row => Pair(row, "ic", "rv"))];

    private static PairedReading Pair(Dictionary<string, double> row, string reference, string reading) =>
        new(row["subject"].ToString(CultureInfo.InvariantCulture), row[reference], row[reading]);

    private static IEnumerable<Dictionary<string, double>> Rows(string file)
    {
        var lines = File.ReadAllLines(Path.Combine(Recordings.Root, "tests", "vectors", "agreement", file));
        var names = lines[0].Split(',');
        return lines.Skip(1).Select(line => names.Zip(line.Split(',')).ToDictionary(cell => cell.First, cell => double.Parse(cell.Second, CultureInfo.InvariantCulture), StringComparer.Ordinal));
    }
}
