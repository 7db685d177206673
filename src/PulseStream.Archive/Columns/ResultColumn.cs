using System.IO.Hashing;
using System.Runtime.InteropServices;
using Parquet;
using Parquet.Schema;

namespace PulseStream.Archive.Columns;

/// <summary>A column of results: a few rows a second at most, so cells are kept as they come and turned on writing.</summary>
/// <param name="name">Name in the file.</param>
/// <param name="kind">How it is stored.</param>
internal sealed class ResultColumn(string name, CellKind kind) : Column(FieldOf(name, kind), isDeltaPacked: false)
{
    // Two a cell, handed to the hash together.
    private const int WordsTogether = 128;
    private readonly List<Cell> cells = [];

    public override int Count => cells.Count;

    /// <summary>The rows held.</summary>
    public IReadOnlyList<Cell> Cells => cells;

    /// <summary>Adds a row.</summary>
    /// <param name="cell">Its value.</param>
    public void Add(Cell cell) => cells.Add(cell);

    public override void Clear() => cells.Clear();

    public override Task WriteAsync(ParquetRowGroupWriter writer, Dictionary<string, string> metadata) => kind switch
    {
        CellKind.Whole => writer.WriteAsync<long>(Field, All<long?>(c => c.Known is { } known ? (long)known : null), null, metadata),
        CellKind.Decimal => writer.WriteAsync<double>(Field, All(c => c.Known), null, metadata),
        CellKind.Flag => writer.WriteAsync<bool>(Field, All(c => c.Number != 0), null, metadata),
        CellKind.Text => writer.WriteAsync<ReadOnlyMemory<char>>(Field, All(c => c.Text.AsMemory()), null, metadata),
        _ => writer.WriteAsync<DateTime>(Field, All(c => DateTime.UnixEpoch.AddTicks((long)c.Number * TimeSpan.TicksPerMicrosecond)), null, metadata),
    };

    public override Task ReadAsync(ParquetRowGroupReader reader, DataField stored, int rows)
    {
        cells.Clear();
        return kind switch
        {
            CellKind.Whole => ReadAsync(new long?[rows], values => reader.ReadAsync<long>(stored, values), value => (double?)value),
            CellKind.Decimal => ReadAsync(new double?[rows], values => reader.ReadAsync<double>(stored, values), value => value),
            CellKind.Flag => ReadAsync(new bool[rows], values => reader.ReadAsync<bool>(stored, values), value => value ? 1.0 : 0.0),
            CellKind.Text => ReadAsync(new string?[rows], values => reader.ReadAsync(stored, values), value => value ?? string.Empty),
            _ => ReadAsync(new DateTime[rows], values => reader.ReadAsync<DateTime>(stored, values), value => (double)((value - DateTime.UnixEpoch).Ticks / TimeSpan.TicksPerMicrosecond)),
        };
    }

    protected override void AppendTo(XxHash3 hash)
    {
        Span<long> words = stackalloc long[WordsTogether];
        var count = 0;
        foreach (var cell in cells)
        {
            // Every NaN is the same null, and a whole number knows no negative zero: such bits must not count.
            words[count++] = double.IsNaN(cell.Number) ? long.MinValue : BitConverter.DoubleToInt64Bits(cell.Number + 0.0);
            words[count++] = cell.Text?.Length ?? -1L;
            if (cell.Text is not null || count == words.Length)
            {
                hash.Append(MemoryMarshal.AsBytes(words[..count]));
                hash.Append(MemoryMarshal.AsBytes(cell.Text.AsSpan()));
                count = 0;
            }
        }

        hash.Append(MemoryMarshal.AsBytes(words[..count]));
    }

    private static DataField FieldOf(string name, CellKind kind) => kind switch
    {
        CellKind.Whole => new DataField(name, typeof(long), isNullable: true),
        CellKind.Decimal => new DataField(name, typeof(double), isNullable: true),
        CellKind.Flag => new DataField<bool>(name),
        CellKind.Text => new DataField(name, typeof(string), isNullable: false),
        _ => new DateTimeDataField(name, DateTimeFormat.Timestamp, isAdjustedToUTC: true, DateTimeTimeUnit.Micros, isNullable: false),
    };

    private T[] All<T>(Func<Cell, T> turn) => [.. cells.Select(turn)];

    private async Task ReadAsync<T>(T[] values, Func<Memory<T>, ValueTask> read, Func<T, Cell> turn)
    {
        await read(values);
        cells.AddRange(values.Select(turn));
    }
}
