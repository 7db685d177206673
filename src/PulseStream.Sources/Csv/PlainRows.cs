using System.Runtime.CompilerServices;

namespace PulseStream.Sources.Csv;

/// <summary>
/// Reads at once the rows that nearly all rows are: plain numbers, the sample after the one before. It stops before any other,
/// which is then read with care, and so it has no faults of its own to tell.
/// </summary>
internal sealed class PlainRows(CsvLayout layout, RowPlacement placement)
{
    private readonly double[] _values = [.. Enumerable.Repeat(double.NaN, (int)CsvColumn.Ignored)];

    /// <summary>Takes the plain rows that open a text, at most a number of them.</summary>
    /// <param name="text">Lines, the last one perhaps cut off.</param>
    /// <param name="most">Rows.</param>
    /// <returns>Bytes and rows taken.</returns>
    public (int Length, int Rows) Take(ReadOnlySpan<byte> text, int most)
    {
        var (length, rows) = (0, 0);
        for (; rows < most; rows++)
        {
            var end = EndOfRow(text, length);
            if (end < 0 || !placement.TryFollow(RowStamp.Of(_values, layout.HasCounter), _values))
            {
                break;
            }

            length = end;
        }

        return (length, rows);
    }

    // Negative where the row is not plain, or so near to the end of the text that a number could be cut off.
    private int EndOfRow(ReadOnlySpan<byte> text, int at)
    {
        var fields = layout.Fields;
        if (text.Length - at < fields.Length * PlainNumber.LongestText)
        {
            return -1;
        }

        for (var field = 0; field < fields.Length; field++)
        {
            at = fields[field] < CsvColumn.Pleth ? EndOfNumber(fields[field], text, at) : EndOfOther(fields[field], text, at);
            if (at < 0)
            {
                return -1;
            }

            var isLast = field == fields.Length - 1;
            at += isLast && text[at] == '\r' ? 1 : 0;
            if (text[at++] != (isLast ? '\n' : ','))
            {
                return -1;
            }
        }

        return layout.HasCounter && !double.IsInteger(_values[(int)CsvColumn.Sample]) ? -1 : at;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private int EndOfNumber(CsvColumn column, ReadOnlySpan<byte> text, int at) =>
        PlainNumber.TryTake(text, ref at, out _values[(int)column]) ? at : -1;

    // Counts below zero are a fault, which is not for here to tell; all else may be below.
    private int EndOfOther(CsvColumn column, ReadOnlySpan<byte> text, int at)
    {
        if (column == CsvColumn.Ignored)
        {
            var length = text.Slice(at, PlainNumber.LongestText - 2).IndexOfAny(",\r\n"u8);
            return length < 0 ? -1 : at + length;
        }

        var isNegative = text[at] == '-';
        var end = EndOfNumber(column, text, isNegative ? at + 1 : at);
        _values[(int)column] = isNegative ? -_values[(int)column] : _values[(int)column];
        return end;
    }
}
