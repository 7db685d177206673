using System.Text;
using PulseStream.Plots.Bench;
using PulseStream.Sweeps;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A sweep as a page of heat maps: saturation over perfusion, one map for each choice of the other coordinates.</summary>
internal static class SweepPage
{
    public static string Of(SweepOutcome outcome)
    {
        var html = new StringBuilder();
        html.Append($"<p>{outcome.Cells.Count} cells, {outcome.Total.Runs} recordings, {outcome.Total.Seconds} s. {outcome.Beyond} cells are beyond {outcome.Limit:0.##} points of A_rms (outlined), {outcome.Refused} were refused throughout (grey). Accepted readings: {outcome.Total.Readings}, wrong ones: {outcome.Total.Wrong}.</p>\n");
        html.Append("<p>Each square: what the heading says; under it the share of seconds that were used. Deeper orange is worse; blue is better than half the limit.</p>\n");
        foreach (var measure in SweepMeasure.All(outcome.Limit))
        {
            Append(html, outcome, measure);
        }

        if (outcome.Crossings.Count > 0)
        {
            html.Append("<h2>Where the limit is crossed</h2>\n");
            html.Append(BenchHtml.Table(["coordinate", "within", "beyond", .. SweepPoint.Names], outcome.Crossings.Select(Row)));
        }

        return BenchHtml.Page("Where the pipeline stops being right", html.ToString());
    }

    private static IReadOnlyList<string> Row(Crossing crossing)
    {
        var axis = SweepPoint.Names.Index().First(name => name.Item == crossing.Axis).Index;
        return
        [
            crossing.Axis, SweepResult.Shown(crossing.Within.Values[axis]), SweepResult.Shown(crossing.Beyond.Values[axis]),
            .. crossing.Within.Values.Select((value, i) => i == axis ? "" : SweepResult.Shown(value)),
        ];
    }

    private static void Append(StringBuilder html, SweepOutcome outcome, SweepMeasure measure)
    {
        html.Append($"<h2>{measure.Title}</h2>\n<div class=\"maps\">\n");
        foreach (var map in SweepMeasure.Maps(outcome))
        {
            html.Append($"<div><p>{SweepMeasure.Words(map.Key)}</p>\n");
            Append(html, [.. map], outcome.Limit, measure.ValueOf);
            html.Append("</div>\n");
        }

        html.Append("</div>\n");
    }

    private static void Append(StringBuilder html, CellSummary[] cells, double limit, Func<CellSummary, (string Text, double Share)?> valueOf)
    {
        double[] perfusions = [.. cells.Select(cell => cell.Point.Perfusion).Distinct().Order()];
        html.Append("<table><tr><th>SpO₂ % \\ perfusion %</th>").AppendJoin("", perfusions.Select(value => $"<th>{SweepResult.Shown(value)}</th>")).Append("</tr>\n");
        foreach (var row in cells.GroupBy(cell => cell.Point.Spo2).OrderByDescending(row => row.Key))
        {
            html.Append($"<tr><th>{SweepResult.Shown(row.Key)}</th>");
            foreach (var perfusion in perfusions)
            {
                var cell = row.FirstOrDefault(found => found.Point.Perfusion.Equals(perfusion));
                html.Append(cell is null ? "<td></td>" : Square(cell, limit, valueOf(cell)));
            }

            html.Append("</tr>\n");
        }

        html.Append("</table>\n");
    }

    private static string Square(CellSummary cell, double limit, (string Text, double Share)? value) => value is { } known
        ? $"<td class=\"cell{(cell.Arms > limit ? " beyond" : "")}\" style=\"background:{Colour(known.Share)}\">{known.Text}<br><small>{cell.Used * 100:0} %</small></td>"
        : $"<td class=\"cell\" style=\"background:{Colour(null)}\">–<br><small>{cell.Used * 100:0} %</small></td>";

    private static string Colour(double? share)
    {
        var (red, green, blue) = HeatColour.At(share);
        return $"rgb({red},{green},{blue})";
    }
}
