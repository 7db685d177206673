using System.Globalization;
using System.IO.Hashing;
using System.Text;
using Parquet;
using Parquet.Schema;

namespace PulseStream.Archive.Columns;

/// <summary>One column of one row group on its way into a Parquet file or out of it.</summary>
/// <param name="definition">Name and type in the file.</param>
/// <param name="isDeltaPacked">Whether neighbours are close enough for DELTA_BINARY_PACKED to pay.</param>
internal abstract class Column(DataField definition, bool isDeltaPacked)
{
    /// <summary>Name and type in the file.</summary>
    public DataField Field => definition;

    /// <summary>Whether the column is written as differences between neighbours.</summary>
    public bool IsDeltaPacked => isDeltaPacked;

    /// <summary>Rows held.</summary>
    public abstract int Count { get; }

    /// <summary>Forgets the rows.</summary>
    public abstract void Clear();

    /// <summary>Writes the rows as one chunk.</summary>
    /// <param name="writer">The open row group.</param>
    /// <param name="metadata">Stored with the chunk.</param>
    public abstract Task WriteAsync(ParquetRowGroupWriter writer, Dictionary<string, string> metadata);

    /// <summary>Replaces the rows by those of one chunk.</summary>
    /// <param name="reader">The open row group.</param>
    /// <param name="stored">The field as the file knows it.</param>
    /// <param name="rows">Rows of the group.</param>
    public abstract Task ReadAsync(ParquetRowGroupReader reader, DataField stored, int rows);

    /// <summary>
    /// XxHash3 of the values, of the column's name and of the group's place, so that neither a changed value nor a chunk
    /// that stands in for another goes unseen. Parquet.Net neither writes nor checks page checksums.
    /// </summary>
    /// <param name="group">Row group, from 0.</param>
    public string HashIn(int group)
    {
        var hash = new XxHash3();
        hash.Append(Encoding.UTF8.GetBytes($"{Field.Name}/{group}/{Count}/"));
        AppendTo(hash);
        return hash.GetCurrentHashAsUInt64().ToString("x16", CultureInfo.InvariantCulture);
    }

    /// <summary>Feeds every value to the hash.</summary>
    /// <param name="hash">The hash of the chunk.</param>
    protected abstract void AppendTo(XxHash3 hash);
}
