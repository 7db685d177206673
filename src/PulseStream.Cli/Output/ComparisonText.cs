using PulseStream.Cli.Output.Text;
using PulseStream.Comparison;
using PulseStream.Triage;

namespace PulseStream.Cli.Output;

/// <summary>Shows a comparison to people: what it comes to first, then each recording that changed, worst first.</summary>
internal static class ComparisonText
{
    public static void Print(TextWriter text, RunComparison comparison, IReadOnlyList<string> exceeded)
    {
        text.WriteLine(Summary(comparison));
        foreach (var row in comparison.Recordings.Where(row => row.Verdict != Verdict.Same || row.Problem is not null))
        {
            Print(text, row);
        }

        text.WriteLine();
        text.WriteLine($"  Readings: {comparison.OnlyA} only in A, {comparison.OnlyB} only in B{Moved(comparison.LargestMove)}.");
        text.WriteLine($"  Seconds used: A {Share(comparison.UsedA)}, B {Share(comparison.UsedB)}.");
        foreach (var limit in exceeded)
        {
            text.WriteLine($"  NOT MET: {limit}.");
        }
    }

    private static string Summary(RunComparison comparison) =>
        $"{Count(comparison.Recordings.Count, "recording")}: {Count(comparison.Count(Verdict.Lost), "lost alarm")}, "
        + $"{Count(comparison.Count(Verdict.Gained), "gained alarm")}, {comparison.Count(Verdict.Moved)} moved, {comparison.Count(Verdict.Same)} same.";

    private static void Print(TextWriter text, RecordingComparison row)
    {
        text.WriteLine();
        text.WriteLine($"  {ComparisonNames.Of(row.Verdict).ToUpperInvariant()}  {row.Recording}");
        text.WriteLine($"    advice {Level(row.AdviceA)} -> {Level(row.AdviceB)}; readings {row.OnlyA} only in A, {row.OnlyB} only in B{Move(row)}");
        text.WriteLine($"    seconds used {Share(row.UsedA)} -> {Share(row.UsedB)}");
        foreach (var line in row.Problem is { } problem ? Wrapped.Lines(problem) : [])
        {
            text.WriteLine($"    {line}");
        }
    }

    private static string Count(int count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";

    private static string Level(AdviceLevel? level) => level is { } known ? AdviceLevelName.Of(known) : "none";

    private static string Share(double? share) => share is { } known ? $"{100 * known:0.0} %" : "unknown";

    private static string Moved(int? points) => points is > 0 and var known ? $", largest move {Count(known, "point")}" : "";

    private static string Move(RecordingComparison row) => row is { MovedFrom: { } from, MovedTo: { } to }
        ? $", largest move {from.Spo2Percent} -> {to.Spo2Percent} % at {from.Second} s"
        : "";
}
