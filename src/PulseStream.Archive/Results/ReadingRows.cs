using PulseStream.Archive.Columns;
using PulseStream.Readings;

namespace PulseStream.Archive.Results;

/// <summary>Accepted readings as rows.</summary>
internal static class ReadingRows
{
    public static readonly ResultTable Table = new("readings",
    [
        ("second", CellKind.Whole),
        ("spo2", CellKind.Whole),
        ("spo2Low", CellKind.Decimal),
        ("spo2High", CellKind.Decimal),
        ("pulse", CellKind.Whole),
        ("perfusion", CellKind.Decimal),
        ("heldSeconds", CellKind.Whole),
        ("spo2Unrounded", CellKind.Decimal),
        ("reasons", CellKind.Text),
    ]);

    public static Cell[] Of(Reading reading) =>
    [
        reading.SecondIndex, reading.WholeSpo2Percent, reading.Spo2.LowPercent, reading.Spo2.HighPercent,
        reading.PulseRatePerMinute, reading.PerfusionPercent, reading.HeldSeconds, reading.Spo2.Percent, WireNames.Of(reading.Warnings),
    ];

    public static Reading From(Cell[] row) => new(
        (long)row[0].Number,
        (int)row[1].Number,
        new Saturation(row[7].Number, row[2].Number, row[3].Number),
        row[4].KnownWhole,
        row[5].Known,
        (int)row[6].Number,
        WireNames.ReasonsOf(row[8].Text!));
}
