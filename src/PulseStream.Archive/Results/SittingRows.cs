using PulseStream.Archive.Columns;
using PulseStream.Readings;

namespace PulseStream.Archive.Results;

/// <summary>Sittings as rows. Readings of theirs are named by their second.</summary>
internal static class SittingRows
{
    public static readonly ResultTable Table = new("sittings",
    [
        ("from", CellKind.Whole),
        ("to", CellKind.Whole),
        ("outcome", CellKind.Text),
        ("spo2", CellKind.Whole),
        ("pulse", CellKind.Whole),
        ("readings", CellKind.Whole),
        ("reasons", CellKind.Text),
        ("spo2Lowest", CellKind.Whole),
        ("recordSecond", CellKind.Whole),
        ("lowestSecond", CellKind.Whole),
    ]);

    public static Cell[] Of(Sitting sitting) =>
    [
        sitting.FromSecond, sitting.ToSecond, WireNames.Of(sitting.Outcome), sitting.RecordReading?.WholeSpo2Percent,
        sitting.RecordReading is { } record ? record.PulseRatePerMinute : sitting.MedianPulseRatePerMinute,
        sitting.ReadingCount, WireNames.Of(sitting.Reasons), sitting.LowestReading?.WholeSpo2Percent,
        sitting.RecordReading?.SecondIndex, sitting.LowestReading?.SecondIndex,
    ];

    public static Sitting From(Cell[] row, IReadOnlyDictionary<long, Reading> readings) => new(
        (long)row[0].Number,
        (long)row[1].Number,
        WireNames.OutcomeOf(row[2].Text!),
        ReadingAt(row[8], readings),
        ReadingAt(row[9], readings),
        row[8].Known is null ? row[4].KnownWhole : null,
        (int)row[5].Number,
        WireNames.ReasonsOf(row[6].Text!));

    private static Reading? ReadingAt(Cell second, IReadOnlyDictionary<long, Reading> readings) =>
        second.Known is { } known ? readings.GetValueOrDefault((long)known) : null;
}
