using System.Text;
using PulseStream.Cli.Output.Bench;
using PulseStream.Comparison;
using PulseStream.Plots.Bench;
using PulseStream.Triage;

namespace PulseStream.Cli.Output;

/// <summary>A comparison as a page that needs nothing else: lost alarms first, then what it comes to overall, then every recording.</summary>
internal static class ComparisonPage
{
    private static readonly string[] Columns =
        ["Recording", "Advice A", "B", "Direction", "Readings vanished", "Appeared", "Another value", "Largest move", "Used A", "Used B", "Note"];

    private static readonly (Verdict Verdict, string Title)[] Sections =
    [
        (Verdict.Lost, "Lost alarms"), (Verdict.Gained, "Gained alarms"), (Verdict.Moved, "Moved readings, or one run lacks the recording"),
    ];

    public static string HtmlOf(RunComparison comparison, IReadOnlyList<string> exceeded)
    {
        var html = new StringBuilder();
        html.Append($"<p><strong>{BenchHtml.Text(ComparisonWords.Summary(comparison))}</strong></p>\n");
        html.AppendJoin("", exceeded.Select(limit => $"<p class=\"no\">Not met: {BenchHtml.Text(limit)}.</p>\n"));
        Section(html, comparison, Sections[0]);
        Overall(html, comparison);
        foreach (var section in Sections.Skip(1))
        {
            Section(html, comparison, section);
        }

        html.Append($"<details><summary>{ComparisonWords.Count(comparison.Count(Verdict.Same), "recording")} the same</summary>\n")
            .Append(Table(comparison, Verdict.Same)).Append("</details>\n")
            .Append("<p class=\"soft\">A reading is the same one where both runs accepted it within a few seconds. An alarm is lost where advice that asked for action in A is missing in B or less urgent, in any sitting. Used: share of the seconds that could be believed.</p>\n");
        return BenchHtml.Page("What changed from A to B", html.ToString());
    }

    private static void Section(StringBuilder html, RunComparison comparison, (Verdict Verdict, string Title) section)
    {
        html.Append($"<h2>{section.Title}</h2>\n");
        html.Append(comparison.Count(section.Verdict) == 0 ? "<p>None.</p>\n" : Table(comparison, section.Verdict));
    }

    private static string Table(RunComparison comparison, Verdict verdict) =>
        BenchHtml.Table(Columns, comparison.Recordings.Where(row => row.Verdict == verdict).Select(Row));

    private static IReadOnlyList<string> Row(RecordingComparison row) =>
    [
        row.Recording, ComparisonWords.Level(row.AdviceA), ComparisonWords.Level(row.AdviceB), ComparisonWords.Direction(row),
        $"{row.OnlyA}", $"{row.OnlyB}", $"{row.MovedReadings}", Together(ComparisonWords.Move(row) ?? ""),
        Together(ComparisonWords.Share(row.UsedA)), Together(ComparisonWords.Share(row.UsedB)), row.Problem ?? "",
    ];

    // A value and its unit stay in one line, and so do the two ends of an arrow.
    private static string Together(string cell) => cell.Replace(' ', '\u00A0').Replace("->", "→", StringComparison.Ordinal);

    private static void Overall(StringBuilder html, RunComparison comparison)
    {
        html.Append("<h2>Overall</h2>\n").Append(BenchHtml.Table(["", "A", "B"],
        [
            ["Judged by", JudgedBy(comparison, row => row.JudgedByA), JudgedBy(comparison, row => row.JudgedByB)],
            ["Seconds used", ComparisonWords.Share(comparison.UsedA), ComparisonWords.Share(comparison.UsedB)],
            ["Readings of this run alone", $"{comparison.OnlyA}", $"{comparison.OnlyB}"],
        ]));
        html.Append($"<p>{ComparisonWords.Count(comparison.Both.Values.Sum(), "reading")} in both, {comparison.MovedReadings} with another value{(comparison.LargestMove is > 0 and var points ? $", by {ComparisonWords.Count(points, "point")} at most" : "")}. {ComparisonWords.Count(comparison.Unreadable, "recording")} could not be read.</p>\n");
        html.Append("<h2>Most urgent advice of each recording: A down, B across</h2>\n").Append(Advice(comparison));
        if (comparison.MovedReadings > 0)
        {
            using var figure = ComparisonFigure.Of(comparison.Both);
            html.Append("<h2>Readings</h2>\n").Append(BenchHtml.Figure(figure.Title, figure.ToPng()));
        }
    }

    private static string JudgedBy(RunComparison comparison, Func<RecordingComparison, string?> ofRow) =>
        string.Join("; ", ComparisonWords.JudgedBy(comparison, ofRow));

    // Below the diagonal advice became less urgent: a quality engineer looks there first.
    private static string Advice(RunComparison comparison)
    {
        AdviceLevel?[] levels = [null, .. Enum.GetValues<AdviceLevel>()];
        return BenchHtml.Table(
            ["A", .. levels.Select(ComparisonWords.Level)],
            levels.Select(a => (IReadOnlyList<string>)[ComparisonWords.Level(a), .. levels.Select(b => $"{comparison.Recordings.Count(row => row.AdviceA == a && row.AdviceB == b)}")]));
    }
}
