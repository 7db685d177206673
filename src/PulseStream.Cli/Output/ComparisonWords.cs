using PulseStream.Comparison;
using PulseStream.Triage;

namespace PulseStream.Cli.Output;

/// <summary>What a comparison says to people, in text and on the page alike.</summary>
internal static class ComparisonWords
{
    public static string Summary(RunComparison comparison) =>
        $"{Count(comparison.Recordings.Count, "recording")}: {Count(comparison.Count(Verdict.Lost), "lost alarm")}, "
        + $"{Count(comparison.Count(Verdict.Gained), "gained alarm")}, {comparison.Count(Verdict.Moved)} moved, {comparison.Count(Verdict.Same)} same.";

    public static string Count(long count, string what) => count == 1 ? $"1 {what}" : $"{count} {what}s";

    public static string Level(AdviceLevel? level) => level is { } known ? AdviceLevelName.Of(known) : "none";

    public static string Share(double? share) => share is { } known ? $"{100 * known:0.0} %" : "unknown";

    /// <summary>The largest move of a recording; null where nothing moved.</summary>
    public static string? Move(RecordingComparison row) => row is { MovedFrom: { } from, MovedTo: { } to }
        ? $"{from.Spo2Percent} -> {to.Spo2Percent} % at {from.Second} s"
        : null;

    /// <summary>In which direction the most urgent advice changed.</summary>
    public static string Direction(RecordingComparison row) => row.AdviceRise switch
    {
        < 0 => "less urgent",
        > 0 => "more urgent",
        _ => row.Verdict is Verdict.Lost or Verdict.Gained ? "another sitting" : "as before",
    };

    /// <summary>Everything that the results of one run were judged by.</summary>
    public static IReadOnlyList<string> JudgedBy(RunComparison comparison, Func<RecordingComparison, string?> ofRow) =>
        [.. comparison.Recordings.Select(ofRow).OfType<string>().Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal).DefaultIfEmpty("not told")];
}
