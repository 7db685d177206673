using PulseStream.Archive.Columns;

namespace PulseStream.Archive.Results;

/// <summary>One kind of result: the table in the journal and the Parquet file that is made of it.</summary>
/// <param name="Name">Of the table, and of the file without its ending.</param>
/// <param name="Columns">Names and kinds in order; the first holds seconds since the recording's start.</param>
internal sealed record ResultTable(string Name, IReadOnlyList<(string Name, CellKind Kind)> Columns)
{
    /// <summary>Name of the Parquet file.</summary>
    public string FileName => Name + WireNames.ParquetSuffix;

    /// <summary>Adds rows to the journal's table.</summary>
    public string InsertSql { get; } = $"INSERT INTO {Name} VALUES ($0)";

    /// <summary>Whether each row says what made it. Beats, which no curve has touched, leave it to the file's metadata.</summary>
    public bool HasOrigin { get; init; } = true;

    /// <summary>All of them.</summary>
    public static IReadOnlyList<ResultTable> All { get; } =
        [SecondRows.Table, BeatRows.Table, ReadingRows.Table, SittingRows.Table, AdviceRows.Table];

    /// <summary>Empty columns of the file, without the time.</summary>
    public IReadOnlyList<ResultColumn> NewColumns() => [.. Columns.Select(c => new ResultColumn(c.Name, c.Kind))];
}
