using PulseStream.Archive.Columns;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Archive.Results;

/// <summary>Beats as rows.</summary>
internal static class BeatRows
{
    public static readonly ResultTable Table = new("beats",
    [
        ("time", CellKind.Decimal),
        ("interval", CellKind.Decimal),
        ("ratio", CellKind.Decimal),
        ("quality", CellKind.Decimal),
        ("perfusion", CellKind.Decimal),
    ])
    { HasOrigin = false };

    public static Cell[] Of(in Beat beat, SampleRate rate) =>
        [rate.SecondsAt(beat.RiseIndex), beat.IntervalSeconds, beat.RatioOfRatios, beat.Quality, beat.PerfusionPercent];

    public static Beat From(Cell[] row, SampleRate rate) =>
        new(row[0].Number * rate.Hz, row[1].Number, row[2].Number, row[4].Number, row[3].Number);
}
