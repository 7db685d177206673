namespace PulseStream.Sources.Csv;

/// <summary>Reads the numbers of one row after another, without allocating for a good one.</summary>
internal sealed class CsvRowParser(CsvLayout layout)
{
    // Beyond this a double no longer holds every whole number, and counters could not be told apart.
    private const double LargestCounter = 1L << 53;

    private readonly double[] _values = [.. Enumerable.Repeat(double.NaN, (int)CsvColumn.Ignored)];
    private int _faultyField;

    /// <returns><see cref="RowFault.None"/> where every number of the row is good.</returns>
    public RowFault Parse(ReadOnlySpan<byte> line, long lineNumber, out CsvRow row)
    {
        row = default;
        var fields = layout.Fields;
        var rest = line;
        for (var at = 0; at < fields.Length; at++)
        {
            var fault = ReadField(fields[at], rest, out var length);
            var isLast = at == fields.Length - 1;
            if (fault != RowFault.None || isLast != (length == rest.Length))
            {
                _faultyField = at;
                return CountFields(line) == fields.Length ? fault : RowFault.FieldCount;
            }

            rest = isLast ? default : rest[(length + 1)..];
        }

        row = new CsvRow(lineNumber, RowStamp.Of(_values, layout.HasCounter), CsvRow.SampleOf(_values));
        return RowFault.None;
    }

    /// <summary>What was expected and found in the row that <see cref="Parse"/> has just refused.</summary>
    public string Explain(RowFault fault, ReadOnlySpan<byte> line)
    {
        if (fault == RowFault.FieldCount)
        {
            return $"expected {layout.Fields.Length}, found {CountFields(line)}";
        }

        var found = FieldAt(line, _faultyField);
        return $"column '{CsvColumnNames.Of(layout.Fields[_faultyField])}' holds '{PrintableText.Of(found)}'";
    }

    /// <summary>The counter of a row that has been refused, where it can still be read.</summary>
    public long? CounterOf(ReadOnlySpan<byte> line)
    {
        var field = Array.IndexOf(layout.Fields, CsvColumn.Sample);
        return field >= 0
            && CountFields(line) == layout.Fields.Length
            && ReadField(CsvColumn.Sample, FieldAt(line, field), out _) == RowFault.None
            ? (long)_values[(int)CsvColumn.Sample]
            : null;
    }

    /// <summary>How finely the times are written, in seconds; null where an exponent hides it.</summary>
    public double? TimeResolution(ReadOnlySpan<byte> line) =>
        CsvNumber.Decimals(FieldAt(line, Array.IndexOf(layout.Fields, CsvColumn.Time))) is { } decimals ? Math.Pow(10, -decimals) : null;

    private static int CountFields(ReadOnlySpan<byte> line) => line.Count((byte)',') + 1;

    private static ReadOnlySpan<byte> FieldAt(ReadOnlySpan<byte> line, int field)
    {
        foreach (var range in line.Split((byte)','))
        {
            if (field-- == 0)
            {
                return line[range];
            }
        }

        return default;
    }

    private RowFault ReadField(CsvColumn column, ReadOnlySpan<byte> text, out int length)
    {
        if (column == CsvColumn.Ignored)
        {
            length = text.IndexOf((byte)',');
            length = length < 0 ? text.Length : length;
            return RowFault.None;
        }

        if (!CsvNumber.TryRead(text, out var value, out length))
        {
            return RowFault.NotANumber;
        }

        _values[(int)column] = value;
        return !double.IsFinite(value) ? RowFault.NotFinite
            : column is CsvColumn.Red or CsvColumn.Infrared or CsvColumn.Ambient && value < 0 ? RowFault.NegativeCounts
            : column is CsvColumn.Sample && !IsCounter(value) ? RowFault.CounterNotWhole
            : RowFault.None;
    }

    private static bool IsCounter(double value) => value >= 0 && value <= LargestCounter && Math.Floor(value) == value;
}
