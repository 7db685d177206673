using PulseStream.Archive.Results;

namespace PulseStream.Archive.Sealing;

/// <summary>
/// Readings, sittings and advice of a short session in session.json, a row a text: whoever goes through thousands of sessions opens one
/// small file of each instead of four. It is sealed together with the hashes of the files that it repeats.
/// </summary>
/// <param name="Readings">Rows of readings.parquet.</param>
/// <param name="Sittings">Rows of sittings.parquet.</param>
/// <param name="Advice">Rows of advice.parquet without their words.</param>
internal sealed record OutlineDocument(IReadOnlyList<string> Readings, IReadOnlyList<string> Sittings, IReadOnlyList<string> Advice)
{
    // A spot check has a few rows. A night has hundreds: there the files are the quicker way.
    private const int MostRows = 200;

    /// <summary>Files whose rows it repeats.</summary>
    public static IReadOnlyList<string> Files { get; } = [ReadingRows.Table.FileName, SittingRows.Table.FileName, AdviceRows.Table.FileName];

    /// <summary>The outline of a session; null where it has too many rows.</summary>
    /// <param name="rows">How many rows the files have.</param>
    /// <param name="rowsOf">The rows of a table.</param>
    public static OutlineDocument? Of(long rows, Func<ResultTable, IEnumerable<Columns.Cell[]>> rowsOf) => rows > MostRows ? null : new(
        [.. rowsOf(ReadingRows.Table).Select(row => RowText.Of(row))],
        [.. rowsOf(SittingRows.Table).Select(row => RowText.Of(row))],
        [.. rowsOf(AdviceRows.Table).Select(row => RowText.Of([row[0], row[1], row[3]]))]);

    /// <summary>The outline as it was before.</summary>
    public SessionOutline Read()
    {
        var readings = Readings.Select(row => ReadingRows.From(RowText.Cells(row, ReadingRows.Table.Columns.Select(column => column.Kind)))).ToList();
        return new(
            readings,
            [.. Sittings.Select(row => SittingRows.From(RowText.Cells(row, SittingRows.Table.Columns.Select(column => column.Kind)), readings))],
            [.. Advice.Select(row => AdviceOf(RowText.Cells(row, [Columns.CellKind.Whole, Columns.CellKind.Text, Columns.CellKind.Whole])))]);
    }

    private static OutlinedAdvice AdviceOf(Columns.Cell[] row) => new((long)row[0].Number, row[1].Text!, row[2].KnownWhole);
}
