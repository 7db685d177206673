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

    /// <summary>The sitting of a row. Its reading of record may have been held for longer than when it was accepted: its interval and perfusion are those of its acceptance.</summary>
    /// <param name="row">The row.</param>
    /// <param name="readings">The readings of the session in order.</param>
    public static Sitting From(Cell[] row, IReadOnlyList<Reading> readings) => new(
        (long)row[0].Number,
        (long)row[1].Number,
        WireNames.OutcomeOf(row[2].Text!),
        HeldUntil(row[8], readings) is { } record ? record with { PulseRatePerMinute = row[4].KnownWhole } : null,
        HeldUntil(row[9], readings),
        row[8].Known is null ? row[4].KnownWhole : null,
        (int)row[5].Number,
        WireNames.ReasonsOf(row[6].Text!));

    // What is held at a second was accepted at it or before, and nothing has been accepted since.
    private static Reading? HeldUntil(Cell second, IReadOnlyList<Reading> readings)
    {
        if (second.Known is not { } known || readings.LastOrDefault(reading => reading.SecondIndex <= known) is not { } accepted)
        {
            return null;
        }

        var until = (long)known;
        return accepted with { SecondIndex = until, HeldSeconds = accepted.HeldSeconds + (int)(until - accepted.SecondIndex) };
    }
}
