using PulseStream.Archive.Columns;
using PulseStream.Readings;

namespace PulseStream.Archive.Results;

/// <summary>Seconds as rows.</summary>
internal static class SecondRows
{
    public static readonly ResultTable Table = new("seconds",
    [
        ("second", CellKind.Whole),
        ("usable", CellKind.Flag),
        ("spo2", CellKind.Decimal),
        ("spo2Low", CellKind.Decimal),
        ("spo2High", CellKind.Decimal),
        ("pulse", CellKind.Decimal),
        ("perfusion", CellKind.Decimal),
        ("reasons", CellKind.Text),
    ]);

    public static Cell[] Of(Second second) => second.Usable is { } usable
        ? [usable.SecondIndex, 1, usable.Spo2?.Percent, usable.Spo2?.LowPercent, usable.Spo2?.HighPercent, usable.PulseRatePerMinute, usable.PerfusionPercent, WireNames.Of(usable.Warnings)]
        : [second.SecondIndex, 0, double.NaN, double.NaN, double.NaN, double.NaN, second.PerfusionPercent, WireNames.Of(second.Unusable?.Reasons ?? Reasons.None)];

    public static bool IsUsable(Cell[] row) => row[1].Number != 0;

    public static Second From(Cell[] row)
    {
        var second = (long)row[0].Number;
        var reasons = WireNames.ReasonsOf(row[7].Text!);
        return !IsUsable(row)
            ? new UnusableSecond(second, reasons, row[6].Known)
            : new UsableSecond(second, row[2].Known is { } spo2 ? new(spo2, row[3].Number, row[4].Number) : null, row[5].Known, row[6].Known, reasons);
    }
}
