using PulseStream.Plots.Bench;
using PulseStream.Sweeps;

namespace PulseStream.Cli.Output.Bench;

/// <summary>What a heat map of a sweep shows.</summary>
/// <param name="Name">Name of its figure's file.</param>
/// <param name="Title">With the unit.</param>
/// <param name="ValueOf">A cell's value in words and over its limit; null where it has none.</param>
internal sealed record SweepMeasure(string Name, string Title, Func<CellSummary, (string Text, double Share)?> ValueOf)
{
    // A finger that needs as long is called away.
    private const double LatestFirstSeconds = 30;

    /// <summary>Accuracy of seconds and of readings, time to the first reading, share refused, wrong acceptances.</summary>
    /// <param name="limit">Largest A_rms that is right.</param>
    public static IReadOnlyList<SweepMeasure> All(double limit) =>
    [
        new("sweep-accuracy-of-seconds", "Accuracy of seconds: A_rms (points)", cell => cell.Arms is { } arms ? ($"{arms:0.0}", arms / limit) : null),
        new("sweep-accuracy-of-readings", "Accuracy of accepted readings: A_rms (points)", cell => cell.ReadingArms is { } arms ? ($"{arms:0.0}", arms / limit) : null),
        new("sweep-first-reading", "Time to the first reading (s)", cell => cell.First is { } first ? ($"{first:0}", first / LatestFirstSeconds) : null),
        new("sweep-refused", "Seconds refused (%)", cell => ($"{100 * (1 - cell.Used):0}", HeatColour.DeepestShare * (1 - cell.Used))),
        new("sweep-wrong-readings", "Wrong readings, of all", cell => cell.Readings > 0 ? ($"{cell.Wrong} of {cell.Readings}", HeatColour.DeepestShare * cell.Wrong / cell.Readings) : null),
    ];

    /// <summary>Coordinates that a map shares.</summary>
    public static string Words((double Pulse, double Motion, double Noise, double Rate) map) =>
        $"pulse {SweepResult.Shown(map.Pulse)} /min, motion {SweepResult.Shown(map.Motion)}, noise {SweepResult.Shown(map.Noise)}, {SweepResult.Shown(map.Rate)} Hz";

    /// <summary>Cells by map: saturation over perfusion, one map for each choice of the other coordinates.</summary>
    public static IEnumerable<IGrouping<(double Pulse, double Motion, double Noise, double Rate), CellSummary>> Maps(SweepOutcome outcome) =>
        outcome.Cells.GroupBy(cell => (cell.Point.Pulse, cell.Point.Motion, cell.Point.Noise, cell.Point.Rate));
}
