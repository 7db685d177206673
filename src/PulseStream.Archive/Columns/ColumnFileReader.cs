using System.Globalization;
using Parquet;
using Parquet.Schema;
using PulseStream.Samples;

namespace PulseStream.Archive.Columns;

/// <summary>Reads one Parquet file that <see cref="ColumnFileWriter"/> wrote and believes no chunk whose hash differs.</summary>
internal sealed class ColumnFileReader : IDisposable
{
    private readonly string path;
    private readonly InlineFile stream;
    private readonly ParquetReader reader;
    private readonly Dictionary<string, DataField> fields;

    /// <summary>Opens a file.</summary>
    /// <param name="path">The file.</param>
    /// <exception cref="BadInputException">There is none, or it is no whole Parquet file.</exception>
    public ColumnFileReader(string path)
    {
        this.path = path;
        stream = Believed(() => new InlineFile(new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read)));
        try
        {
            reader = Believed(() => ParquetReader.CreateAsync(stream).GetAwaiter().GetResult());
            fields = Believed(() => reader.Schema.GetDataFields().ToDictionary(f => f.Name, StringComparer.Ordinal));
            ThrowUnlessAllGroupsAreThere();
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    /// <summary>Row groups of the file.</summary>
    public int GroupCount => reader.RowGroupCount;

    /// <summary>Type of a column's values; null where the file has no such column.</summary>
    /// <param name="name">Name of the column.</param>
    public Type? TypeOf(string name) => fields.GetValueOrDefault(name)?.ClrType;

    /// <summary>A word of the file's own metadata; null where it has none of the name.</summary>
    /// <param name="key">Name of the word.</param>
    public string? MetadataOf(string key) => Believed(() => reader.CustomMetadata.GetValueOrDefault(key));

    /// <summary>Empty columns for everything in the file.</summary>
    public IReadOnlyList<Column> NewColumns() => [.. fields.Values.Select(NewColumn)];

    /// <summary>Replaces the rows of the columns by those of a group.</summary>
    /// <param name="group">From 0.</param>
    /// <param name="columns">Those wanted.</param>
    /// <exception cref="BadInputException">A column is missing, of another type, cannot be decoded, or its hash differs.</exception>
    public void ReadGroup(int group, IEnumerable<Column> columns)
    {
        using var groupReader = Believed(() => reader.OpenRowGroupReader(group));
        foreach (var column in columns)
        {
            Read(groupReader, group, column);
        }
    }

    /// <summary>Closes the file.</summary>
    public void Dispose()
    {
        reader.DisposeAsync().AsTask().GetAwaiter().GetResult();
        stream.Dispose();
    }

    // A footer that has lost a row group would else read as a shorter recording.
    private void ThrowUnlessAllGroupsAreThere()
    {
        var told = Believed(() => reader.CustomMetadata.GetValueOrDefault(ColumnFile.RowsKey));
        var found = Believed(() => reader.RowGroups.Sum(g => g.RowCount)).ToString(CultureInfo.InvariantCulture);
        if (!string.Equals(told, found, StringComparison.Ordinal))
        {
            throw ColumnFile.Damaged(path, $"expected {told ?? "a number of"} rows in its row groups, found {found}");
        }
    }

    private static Column NewColumn(DataField stored) => (Type.GetTypeCode(stored.ClrType), stored.IsNullable) switch
    {
        (TypeCode.Int64, false) => new SampleColumn<long>(stored.Name, isDeltaPacked: true),
        (TypeCode.Int32, false) => new SampleColumn<int>(stored.Name, isDeltaPacked: true),
        (TypeCode.Double, false) => new SampleColumn<double>(stored.Name, isDeltaPacked: false),
        (TypeCode.Int64, true) => new ResultColumn(stored.Name, CellKind.Whole),
        (TypeCode.Double, true) => new ResultColumn(stored.Name, CellKind.Decimal),
        (TypeCode.Boolean, _) => new ResultColumn(stored.Name, CellKind.Flag),
        (TypeCode.DateTime, _) => new ResultColumn(stored.Name, CellKind.Instant),
        _ => new ResultColumn(stored.Name, CellKind.Text),
    };

    private void Read(ParquetRowGroupReader groupReader, int group, Column column)
    {
        var name = column.Field.Name;
        if (!fields.TryGetValue(name, out var stored) || stored.ClrType != column.Field.ClrType || stored.IsNullable != column.Field.IsNullable)
        {
            throw ColumnFile.Damaged(path, $"expected a column '{name}' of {column.Field.ClrType.Name}, found {stored?.ClrType.Name ?? "none"}");
        }

        var rows = ColumnFile.RowsOf(path, Believed(() => groupReader.RowCount));
        var hash = Believed(() =>
        {
            column.ReadAsync(groupReader, stored, rows).GetAwaiter().GetResult();
            return groupReader.GetCustomMetadata(stored)?.GetValueOrDefault(ColumnFile.HashKey);
        });
        if (!string.Equals(hash, column.HashIn(group), StringComparison.Ordinal))
        {
            throw ColumnFile.Damaged(path, $"column '{name}' of row group {group} is not what was written: its hash differs");
        }
    }

    // On damaged bytes the library throws a dozen kinds of exception, null references and overflows among them.
    private T Believed<T>(Func<T> read)
    {
        try
        {
            return read();
        }
        catch (Exception e) when (e is not BadInputException)
        {
            throw ColumnFile.Damaged(path, $"expected a whole Parquet file that can be read, found otherwise ({OneLine(e.Message)})", e);
        }
    }

    private static string OneLine(string message) =>
        string.Join(' ', message.Split('\n', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries)).TrimEnd('.');
}
