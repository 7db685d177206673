using System.Text;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Statistics;
using PulseStream.Plots.Bench;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A statement of accuracy as a page with its figures.</summary>
internal static class AccuracyPage
{
    private static readonly string[] Measured = ["pairs", "subjects", "bias", "precision", "A_rms", "95 % interval of A_rms"];

    public static string Of(AccuracyStatement statement, string title, IReadOnlyList<Figure> figures)
    {
        var scale = QuantityScale.Of(statement.Quantity);
        var html = new StringBuilder();
        html.Append($"<p><strong>{BenchHtml.Text(AccuracyText.Verdict(statement))}</strong></p>\n");
        foreach (var warning in statement.Warnings)
        {
            html.Append($"<p class=\"no\">Warning: {BenchHtml.Text(warning)}</p>\n");
        }

        html.Append("<h2>Over all pairs</h2>\n").Append(BenchHtml.Table([scale.ErrorUnit, "value", "95 % interval"], Overall(statement)));
        html.Append("<p class=\"soft\">Error = reading − reference. Intervals respect subjects. Limits of agreement for repeated measurements whose true value varies: Bland and Altman, J Biopharm Stat 2007;17:571-582.</p>\n");
        html.Append("<h2>By reference</h2>\n").Append(BenchHtml.Table([scale.Unit, .. Measured], statement.Bands.Select(band => Row($"{band.From:0.##} to {band.To:0.##}", band.Measures, band.ArmsInterval))));
        if (statement.Groups.Count > 0)
        {
            html.Append("<h2>By skin tone</h2>\n").Append(BenchHtml.Table(["skin tone", .. Measured, "95 % interval of the bias"], statement.Groups.Select(group => (string[])[.. Row(group.Name, group.Measures, group.ArmsInterval), AccuracyText.Shown(group.BiasInterval)])));
            if (statement.LargestDifference is { } largest)
            {
                html.Append($"<p>Largest difference in bias: {BenchHtml.Text(largest.Higher)} less {BenchHtml.Text(largest.Lower)}, {AccuracyText.Shown(largest.Difference)} {AccuracyText.Shown(largest.Interval)}.</p>\n");
            }
        }

        html.Append("<h2>Criteria</h2>\n").Append(BenchHtml.Table(["criterion", "outcome", "found", "source"], statement.Criteria.Select(judged => Row(judged, judged.IsMet ? "met" : "not met")).Concat(statement.NotInForce.Select(judged => Row(judged, judged.IsMet ? "met, not in force" : "not met, not in force")))));
        html.Append("<h2>Figures</h2>\n").AppendJoin("", figures.Select(figure => BenchHtml.Figure(figure.Title, figure.ToPng())));
        return BenchHtml.Page(title, html.ToString());
    }

    private static IReadOnlyList<string> Row(JudgedCriterion judged, string word) => [judged.Criterion.Name, word, AccuracyText.Found(judged), judged.Criterion.Source];

    private static IReadOnlyList<string> Row(string name, Measures measures, ConfidenceInterval? arms) =>
    [
        name, $"{measures.Count}", $"{measures.Subjects}", AccuracyText.Shown(measures.Bias), AccuracyText.Shown(measures.Precision), AccuracyText.Shown(measures.Arms), AccuracyText.Shown(arms),
    ];

    private static IEnumerable<IReadOnlyList<string>> Overall(AccuracyStatement statement)
    {
        yield return ["bias", AccuracyText.Shown(statement.All.Bias), AccuracyText.Shown(statement.BiasInterval)];
        yield return ["precision", AccuracyText.Shown(statement.All.Precision), AccuracyText.Shown(statement.PrecisionInterval)];
        yield return ["A_rms", AccuracyText.Shown(statement.All.Arms), AccuracyText.Shown(statement.ArmsInterval)];
        if (statement.Limits is { } limits)
        {
            yield return ["lower limit of agreement", AccuracyText.Shown(limits.Low), AccuracyText.Shown(limits.LowInterval)];
            yield return ["upper limit of agreement", AccuracyText.Shown(limits.High), AccuracyText.Shown(limits.HighInterval)];
        }

        if (statement.Regression is { } line)
        {
            yield return ["error gained for one more of the reference", $"{line.Slope:0.000}", line.SlopeInterval is { } slope ? $"[{slope.Low:0.000}, {slope.High:0.000}]" : ""];
        }
    }
}
