using System.IO.Hashing;
using System.Runtime.InteropServices;
using Parquet;
using Parquet.Schema;

namespace PulseStream.Archive.Columns;

/// <summary>A column of samples: every row has a value, in a buffer of fixed size that is used again for each row group.</summary>
/// <typeparam name="T">long, int or double.</typeparam>
/// <param name="name">Name in the file.</param>
/// <param name="isDeltaPacked">Whether the column is written as differences between neighbours.</param>
internal sealed class SampleColumn<T>(string name, bool isDeltaPacked) : Column(new DataField<T>(name), isDeltaPacked)
    where T : unmanaged
{
    private T[] values = new T[ColumnFile.RowsPerGroup];
    private int count;

    public override int Count => count;

    /// <summary>The rows held.</summary>
    public ReadOnlySpan<T> Values => values.AsSpan(0, count);

    /// <summary>Room for further rows, to be filled by the caller.</summary>
    /// <param name="rows">How many.</param>
    public Span<T> Extend(int rows)
    {
        count += rows;
        return values.AsSpan(count - rows, rows);
    }

    public override void Clear() => count = 0;

    public override Task WriteAsync(ParquetRowGroupWriter writer, Dictionary<string, string> metadata) =>
        writer.WriteAsync<T>(Field, values.AsMemory(0, count), null, metadata);

    public override Task ReadAsync(ParquetRowGroupReader reader, DataField stored, int rows)
    {
        if (rows > values.Length)
        {
            values = new T[rows];
        }

        count = rows;
        return reader.ReadAsync<T>(stored, values.AsMemory(0, rows)).AsTask();
    }

    protected override void AppendTo(XxHash3 hash) => hash.Append(MemoryMarshal.AsBytes(Values));
}
