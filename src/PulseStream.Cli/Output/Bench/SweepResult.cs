using PulseStream.Sweeps;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A sweep as JSON lines and for people.</summary>
internal static class SweepResult
{
    private const int MostCrossings = 40;

    public static void Print(Stream output, SweepOutcome outcome)
    {
        foreach (var cell in outcome.Cells)
        {
            using var line = new JsonLine(output, "cell");
            Measured(Placed(line, cell.Point), cell);
        }

        using var total = new JsonLine(output, "total");
        Measured(total.Whole("cells", outcome.Cells.Count), outcome.Total).Number("limit", outcome.Limit).Whole("beyond", outcome.Beyond).Whole("refused", outcome.Refused)
            .List("boundary", outcome.Crossings, (line, crossing) => line.Text("axis", crossing.Axis)
                .Object("within", inner => Placed(inner, crossing.Within)).Object("beyond", inner => Placed(inner, crossing.Beyond)));
    }

    public static IEnumerable<string> Lines(SweepOutcome outcome)
    {
        yield return " spo2  perf pulse motion   noise rate   A_rms   bias  used readings wrong first";
        foreach (var cell in outcome.Cells)
        {
            yield return $"{Shown(cell.Point.Spo2),5} {Shown(cell.Point.Perfusion),5} {Shown(cell.Point.Pulse),5} {Shown(cell.Point.Motion),6} {Shown(cell.Point.Noise),7} {Shown(cell.Point.Rate),4} {Measured(cell)}";
        }

        yield return $"{"all",-37} {Measured(outcome.Total)}";
        yield return "";
        yield return $"Of {outcome.Cells.Count} cells {outcome.Beyond} are beyond {outcome.Limit:0.##} points of A_rms, {outcome.Refused} were refused throughout.";
        foreach (var crossing in outcome.Crossings.Take(MostCrossings))
        {
            yield return $"  {Words(crossing)}";
        }

        if (outcome.Crossings.Count > MostCrossings)
        {
            yield return $"  and {outcome.Crossings.Count - MostCrossings} more; --format ndjson tells all";
        }
    }

    /// <summary>A coordinate as short as it goes; a dash where it is not told.</summary>
    public static string Shown(double value) => double.IsNaN(value) ? "-" : $"{value:0.####E+0}" is var power && Math.Abs(value) is > 0 and < 0.01 ? power.Replace("E", "e", StringComparison.Ordinal) : $"{value:0.##}";

    private static string Words(Crossing crossing)
    {
        var axis = SweepPoint.Names.Index().First(name => name.Item == crossing.Axis).Index;
        var others = SweepPoint.Names.Index().Where(name => name.Index != axis).Select(name => $"{name.Item} {Shown(crossing.Within.Values[name.Index])}");
        return $"{crossing.Axis} between {Shown(crossing.Within.Values[axis])} (within) and {Shown(crossing.Beyond.Values[axis])} (beyond), {string.Join(", ", others)}";
    }

    private static string Measured(CellSummary cell) =>
        $"{AccuracyText.Shown(cell.Arms),7} {AccuracyText.Shown(cell.Bias),6} {cell.Used * 100,4:0}% {cell.Readings,8} {cell.Wrong,5} {(cell.First is { } first ? $"{first:0.#}" : "-"),5}";

    private static JsonLine Placed(JsonLine line, SweepPoint point)
    {
        foreach (var (i, name) in SweepPoint.Names.Index())
        {
            line.Number(name, point.Values[i]);
        }

        return line;
    }

    private static JsonLine Measured(JsonLine line, CellSummary cell) => line
        .Number("arms", cell.Arms).Number("bias", cell.Bias).Number("used", cell.Used)
        .Whole("readings", cell.Readings).Whole("wrong", cell.Wrong).Number("first", cell.First)
        .Whole("runs", cell.Runs).Whole("runsWithReading", cell.WithReading).Whole("seconds", cell.Seconds)
        .Number("readingArms", cell.ReadingArms).Number("readingBias", cell.ReadingBias).Number("pulseArms", cell.PulseArms);
}
