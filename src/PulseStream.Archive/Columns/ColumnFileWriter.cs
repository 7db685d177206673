using System.Globalization;
using System.IO.Compression;
using Parquet;
using Parquet.Schema;

namespace PulseStream.Archive.Columns;

/// <summary>Writes one Parquet file, row group by row group, with a hash beside every column chunk.</summary>
internal sealed class ColumnFileWriter : IDisposable
{
    // The library writes a column's pages and headers piece by piece.
    private const int BufferBytes = 64 * 1024;
    private readonly IReadOnlyList<Column> columns;
    private readonly InlineFile stream;
    private readonly ParquetWriter writer;
    private int group;
    private bool isClosed;

    /// <summary>Creates the file, in place of any of that name.</summary>
    /// <param name="path">Where.</param>
    /// <param name="columns">In the order of the file; the rows they hold are written by <see cref="WriteGroup"/>.</param>
    public ColumnFileWriter(string path, IReadOnlyList<Column> columns)
    {
        this.columns = columns;
        stream = new InlineFile(new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, BufferBytes));

        // Delta-packed counts leave little to compress: Optimal saves 0.1 % of them and costs a replay 3 % of its time, the
        // library's default, SmallestSize, saves 0.2 % more and takes ten times as long (measured).
        var options = new ParquetOptions { CompressionMethod = CompressionMethod.Zstd, CompressionLevel = CompressionLevel.Fastest };
        foreach (var column in columns.Where(c => c.IsDeltaPacked))
        {
            options.ColumnEncodingHints[column.Field.Name] = EncodingHint.DeltaBinaryPacked;
        }

        // The file is written inline: every task of the library has ended when it is handed back.
        writer = ParquetWriter.CreateAsync(new ParquetSchema(columns.Select(c => c.Field)), stream, options).GetAwaiter().GetResult();
    }

    /// <summary>Rows written so far.</summary>
    public long Rows { get; private set; }

    /// <summary>Writes what the columns hold as one row group and clears them; nothing where they hold nothing.</summary>
    public void WriteGroup()
    {
        var rows = columns[0].Count;
        if (rows == 0)
        {
            return;
        }

        using var groupWriter = writer.CreateRowGroup();
        foreach (var column in columns)
        {
            var metadata = new Dictionary<string, string>(StringComparer.Ordinal) { [ColumnFile.HashKey] = column.HashIn(group) };
            column.WriteAsync(groupWriter, metadata).GetAwaiter().GetResult();
            column.Clear();
        }

        groupWriter.CompleteValidate();
        Rows += rows;
        group++;
    }

    /// <summary>Writes the footer and waits until the disk has the file.</summary>
    /// <param name="metadata">Of the file; null for none but the number of rows.</param>
    public void Close(IReadOnlyCollection<KeyValuePair<string, string>>? metadata = null)
    {
        writer.CustomMetadata = new Dictionary<string, string>(metadata ?? [], StringComparer.Ordinal)
        {
            [ColumnFile.RowsKey] = Rows.ToString(CultureInfo.InvariantCulture),
        };
        writer.DisposeAsync().AsTask().GetAwaiter().GetResult();
        stream.FlushToDisk();
        isClosed = true;
    }

    /// <summary>Closes the file; without <see cref="Close"/> it is no Parquet file.</summary>
    public void Dispose()
    {
        if (!isClosed)
        {
            writer.DisposeAsync().AsTask().GetAwaiter().GetResult();
        }

        stream.Dispose();
    }
}
