using PulseStream.Archive.Columns;

namespace PulseStream.Archive.Results;

/// <summary>The Parquet file of one kind of result.</summary>
internal static class ResultFile
{
    /// <summary>Writes rows as a file and waits until the disk has it.</summary>
    /// <param name="path">Where.</param>
    /// <param name="table">What they are.</param>
    /// <param name="rows">The rows in order.</param>
    /// <param name="origin">What all rows share: `version` and `curveHash`, in columns and in the file's metadata; where the start is known, the column `time_utc`.</param>
    /// <returns>How many rows were written.</returns>
    public static long Write(string path, ResultTable table, IEnumerable<Cell[]> rows, ResultOrigin origin)
    {
        var columns = table.NewColumns();
        var time = new ResultColumn(WireNames.TimeUtc, CellKind.Instant);
        var shared = table.HasOrigin ? SharedColumns(origin) : [];
        using var writer = new ColumnFileWriter(path, [.. columns, .. shared.Select(one => one.Column), .. origin.Start is null ? (IEnumerable<ResultColumn>)[] : [time]]);
        foreach (var row in rows)
        {
            for (var i = 0; i < row.Length; i++)
            {
                columns[i].Add(row[i]);
            }

            foreach (var (column, value) in shared)
            {
                column.Add(value);
            }

            if (origin.Start is { } instant)
            {
                time.Add(MicrosecondsAt(instant, row[0].Number));
            }

            if (columns[0].Count == ColumnFile.RowsPerGroup)
            {
                writer.WriteGroup();
            }
        }

        writer.WriteGroup();
        writer.Close([new(WireNames.Version, origin.Version), new(WireNames.CurveHash, origin.CurveHash)]);
        return writer.Rows;
    }

    /// <summary>The rows of a file, one group in memory at a time.</summary>
    /// <param name="path">The file.</param>
    /// <param name="table">What they are.</param>
    public static IEnumerable<Cell[]> Read(string path, ResultTable table)
    {
        using var reader = new ColumnFileReader(path);
        var columns = table.NewColumns();
        for (var group = 0; group < reader.GroupCount; group++)
        {
            reader.ReadGroup(group, columns);
            for (var row = 0; row < columns[0].Count; row++)
            {
                yield return [.. columns.Select(c => c.Cells[row])];
            }
        }
    }

    private static (ResultColumn Column, string Value)[] SharedColumns(ResultOrigin origin) =>
    [
        (new(WireNames.Version, CellKind.Text), origin.Version),
        (new(WireNames.CurveHash, CellKind.Text), origin.CurveHash),
    ];

    private static double MicrosecondsAt(DateTimeOffset start, double seconds) =>
        ((start - DateTimeOffset.UnixEpoch).Ticks / TimeSpan.TicksPerMicrosecond) + Math.Round(seconds * 1e6);
}
