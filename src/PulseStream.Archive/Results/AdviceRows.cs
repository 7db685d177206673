using PulseStream.Archive.Columns;

namespace PulseStream.Archive.Results;

/// <summary>Advice as rows.</summary>
internal static class AdviceRows
{
    public static readonly ResultTable Table = new("advice",
    [
        ("second", CellKind.Whole),
        ("level", CellKind.Text),
        ("text", CellKind.Text),
        ("recheckAfterMinutes", CellKind.Whole),
        ("because", CellKind.Text),
    ]);

    public static Cell[] Of(ArchivedAdvice advice) =>
        [advice.Second, advice.Level, advice.Text, advice.RecheckAfterMinutes, advice.Because];

    public static ArchivedAdvice From(Cell[] row) =>
        new((long)row[0].Number, row[1].Text!, row[2].Text!, row[3].KnownWhole, row[4].Text!);
}
