using PulseStream.Cli.Output.Text;
using PulseStream.Comparison;

namespace PulseStream.Cli.Output;

/// <summary>Shows a comparison to people: what it comes to first, then each recording that changed, worst first.</summary>
internal static class ComparisonText
{
    public static void Print(TextWriter text, RunComparison comparison, IReadOnlyList<string> exceeded)
    {
        text.WriteLine(ComparisonWords.Summary(comparison));
        foreach (var row in comparison.Recordings.Where(row => row.Verdict != Verdict.Same || row.Problem is not null))
        {
            Print(text, row);
        }

        text.WriteLine();
        text.WriteLine($"  Readings: {comparison.OnlyA} only in A, {comparison.OnlyB} only in B, {comparison.MovedReadings} with another value{Moved(comparison.LargestMove)}.");
        text.WriteLine($"  Seconds used: A {ComparisonWords.Share(comparison.UsedA)}, B {ComparisonWords.Share(comparison.UsedB)}.");
        text.WriteLine($"  A: {string.Join("; ", ComparisonWords.JudgedBy(comparison, row => row.JudgedByA))}.");
        text.WriteLine($"  B: {string.Join("; ", ComparisonWords.JudgedBy(comparison, row => row.JudgedByB))}.");
        foreach (var limit in exceeded)
        {
            text.WriteLine($"  NOT MET: {limit}.");
        }
    }

    private static void Print(TextWriter text, RecordingComparison row)
    {
        text.WriteLine();
        text.WriteLine($"  {ComparisonNames.Of(row.Verdict).ToUpperInvariant()}  {row.Recording}");
        text.WriteLine($"    advice {ComparisonWords.Level(row.AdviceA)} -> {ComparisonWords.Level(row.AdviceB)}; readings {row.OnlyA} only in A, {row.OnlyB} only in B{(ComparisonWords.Move(row) is { } move ? $", largest move {move}" : "")}");
        text.WriteLine($"    seconds used {ComparisonWords.Share(row.UsedA)} -> {ComparisonWords.Share(row.UsedB)}");
        foreach (var line in row.Problem is { } problem ? Wrapped.Lines(problem) : [])
        {
            text.WriteLine($"    {line}");
        }
    }

    private static string Moved(int? points) => points is > 0 and var known ? $", largest move {ComparisonWords.Count(known, "point")}" : "";
}
