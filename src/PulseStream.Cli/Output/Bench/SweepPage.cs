using System.Text;
using PulseStream.Sweeps;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A sweep as a page of heat maps: saturation over perfusion, one map for each choice of the other coordinates.</summary>
internal static class SweepPage
{
    // Half the limit is white, twice the limit the deepest colour; a person with a colour vision deficiency sees it as well.
    private const double DeepestShare = 2;

    public static string Of(SweepOutcome outcome)
    {
        var html = new StringBuilder();
        html.Append($"<p>{outcome.Cells.Count} cells, {outcome.Total.Runs} recordings, {outcome.Total.Seconds} s. {outcome.Beyond} cells are beyond {outcome.Limit:0.##} points of A_rms (outlined), {outcome.Refused} were refused throughout (grey). Accepted readings: {outcome.Total.Readings}, wrong ones: {outcome.Total.Wrong}.</p>\n");
        html.Append("<p>Each square: A_rms of the used seconds in points; under it the share of seconds that were used. Deeper orange is worse; blue is better than half the limit.</p>\n");
        Append(html, outcome, "Accuracy of seconds", cell => cell.Arms is { } arms ? ($"{arms:0.0}", arms / outcome.Limit) : null);
        Append(html, outcome, "Time to the first reading (s)", cell => cell.First is { } first ? ($"{first:0}", first / 30) : null);
        Append(html, outcome, "Wrong readings", cell => cell.Readings > 0 ? ($"{cell.Wrong} of {cell.Readings}", DeepestShare * cell.Wrong / cell.Readings) : null);
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

    private static void Append(StringBuilder html, SweepOutcome outcome, string title, Func<CellSummary, (string Text, double Share)?> valueOf)
    {
        html.Append($"<h2>{title}</h2>\n<div class=\"maps\">\n");
        foreach (var map in outcome.Cells.GroupBy(cell => (cell.Point.Pulse, cell.Point.Motion, cell.Point.Noise, cell.Point.Rate)))
        {
            html.Append($"<div><p>pulse {SweepResult.Shown(map.Key.Pulse)} /min, motion {SweepResult.Shown(map.Key.Motion)}, noise {SweepResult.Shown(map.Key.Noise)}, {SweepResult.Shown(map.Key.Rate)} Hz</p>\n");
            Append(html, [.. map], outcome.Limit, valueOf);
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
        : $"<td class=\"cell\" style=\"background:#e3e3e3\">–<br><small>{cell.Used * 100:0} %</small></td>";

    // From blue over white at half the limit to orange at twice the limit; ink stays readable on all of them.
    private static string Colour(double share)
    {
        var depth = Math.Clamp(share, 0, DeepestShare);
        return depth < 0.5
            ? Mix((255, 255, 255), (140, 200, 236), 1 - (2 * depth))
            : Mix((255, 255, 255), (240, 150, 60), (depth - 0.5) / (DeepestShare - 0.5));
    }

    private static string Mix((int R, int G, int B) from, (int R, int G, int B) to, double share) =>
        $"rgb({from.R + ((to.R - from.R) * share):0},{from.G + ((to.G - from.G) * share):0},{from.B + ((to.B - from.B) * share):0})";
}
