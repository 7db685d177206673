using PulseStream.Comparison;
using PulseStream.Triage;

namespace PulseStream.Cli.Output;

/// <summary>Shows a comparison as one JSON object a line.</summary>
internal static class ComparisonLines
{
    public static void Print(NdjsonLine line, RunComparison comparison, IReadOnlyList<string> exceeded)
    {
        foreach (var row in comparison.Recordings)
        {
            Print(line, row);
        }

        line.Begin(ComparisonNames.Total)
            .Add(ComparisonNames.Recordings, (long?)comparison.Recordings.Count)
            .Add(ComparisonNames.Of(Verdict.Lost), (long?)comparison.Count(Verdict.Lost))
            .Add(ComparisonNames.Of(Verdict.Gained), (long?)comparison.Count(Verdict.Gained))
            .Add(ComparisonNames.Of(Verdict.Moved), (long?)comparison.Count(Verdict.Moved))
            .Add(ComparisonNames.Of(Verdict.Same), (long?)comparison.Count(Verdict.Same))
            .Add(ComparisonNames.OnlyA, (long?)comparison.OnlyA)
            .Add(ComparisonNames.OnlyB, (long?)comparison.OnlyB)
            .Add(ComparisonNames.LargestMove, (long?)comparison.LargestMove)
            .Add(ComparisonNames.UsedA, comparison.UsedA)
            .Add(ComparisonNames.UsedB, comparison.UsedB)
            .Add(ComparisonNames.ReadingsMoved, (long?)comparison.MovedReadings)
            .Add(ComparisonNames.Unreadable, (long?)comparison.Unreadable)
            .Add(ComparisonNames.Exceeded, exceeded)
            .End();
    }

    private static void Print(NdjsonLine line, RecordingComparison row) => line.Begin(ComparisonNames.Recording)
        .Add(ComparisonNames.Recording, row.Recording)
        .Add(ComparisonNames.OnlyA, (long?)row.OnlyA)
        .Add(ComparisonNames.OnlyB, (long?)row.OnlyB)
        .Add(ComparisonNames.LargestMove, (long?)row.LargestMove)
        .Add(ComparisonNames.UsedA, row.UsedA)
        .Add(ComparisonNames.UsedB, row.UsedB)
        .AddText(ComparisonNames.AdviceA, NameOf(row.AdviceA))
        .AddText(ComparisonNames.AdviceB, NameOf(row.AdviceB))
        .Add(ComparisonNames.VerdictName, ComparisonNames.Of(row.Verdict))
        .Add(ComparisonNames.MoveSecond, row.MovedFrom?.Second)
        .Add(ComparisonNames.MoveFrom, (long?)row.MovedFrom?.Spo2Percent)
        .Add(ComparisonNames.MoveTo, (long?)row.MovedTo?.Spo2Percent)
        .Add(ComparisonNames.ReadingsMoved, (long?)row.MovedReadings)
        .AddText(ComparisonNames.JudgedByA, row.JudgedByA)
        .AddText(ComparisonNames.JudgedByB, row.JudgedByB)
        .AddText(ComparisonNames.Problem, row.Problem)
        .End();

    private static string? NameOf(AdviceLevel? level) => level is { } known ? AdviceLevelName.Of(known) : null;
}
