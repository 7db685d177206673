using PulseStream.Plots.Bench;
using PulseStream.Sweeps;

namespace PulseStream.Cli.Output.Bench;

/// <summary>The heat maps of a sweep as figures.</summary>
internal static class SweepFigures
{
    /// <summary>One figure a measure. The caller disposes them.</summary>
    public static IReadOnlyList<Figure> Of(SweepOutcome outcome) =>
        [.. SweepMeasure.All(outcome.Limit).Select(measure => HeatFigure.Of(measure.Name, measure.Title, "Perfusion (%)", "SpO₂ (%)", [.. SweepMeasure.Maps(outcome).Select(map => MapOf(SweepMeasure.Words(map.Key), [.. map], measure, outcome.Limit))]))];

    private static HeatMap MapOf(string title, CellSummary[] cells, SweepMeasure measure, double limit)
    {
        double[] columns = [.. cells.Select(cell => cell.Point.Perfusion).Distinct().Order()];
        double[] rows = [.. cells.Select(cell => cell.Point.Spo2).Distinct().Order()];
        return new(title, [.. columns.Select(SweepResult.Shown)], [.. rows.Select(SweepResult.Shown)], [.. cells.Select(cell =>
        {
            var value = measure.ValueOf(cell);
            return new HeatCell(
                Array.IndexOf(columns, cell.Point.Perfusion), Array.IndexOf(rows, cell.Point.Spo2), value?.Text ?? "–", $"{cell.Used * 100:0} %", value?.Share, cell.Arms > limit);
        })]);
    }
}
