using System.Globalization;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Wire.Framing;

/// <summary>Turns lines of text into samples.</summary>
internal sealed class TextLines
{
    // Longer than any line of numbers.
    private const int LongestLine = 4096;
    private const int ChecksumLength = 3;

    // Beyond this a double no longer holds every whole number, and counters could not be told apart.
    private const double LargestCounter = 1L << 53;

    private readonly TextLayout _layout;
    private readonly SamplePlacement _placement;
    private readonly double[] _row = new double[(int)CsvColumn.Ignored + 1];
    private readonly Range[] _fields;

    private TextLines(TextLayout layout, SamplePlacement placement)
    {
        (_layout, _placement) = (layout, placement);
        _fields = new Range[layout.Fields.Length + 1];
        Array.Fill(_row, double.NaN);
    }

    /// <summary>The finder of such lines.</summary>
    public static FrameFinder Finder(TextLayout layout, SamplePlacement placement) => new Pieces(
        (byte)'\n',
        LongestLine,
        new TextLines(layout, placement).Take,
        fault => placement.Lose(fault, 1, 1),
        skipsCutPiece: !layout.HasChecksum && layout.StartsWith.Length == 0);

    // What came before a line, or a line whose end was lost, must not cost the line behind it: its opening tells where it
    // begins.
    private WireFault Take(ReadOnlySpan<byte> line, double arrivalSeconds)
    {
        line = line.TrimEnd((byte)'\r');
        var opening = _layout.StartsWith;
        var last = opening.Length == 0 ? 0 : line.LastIndexOf(opening);
        if (line.Length == 0 || last < 0)
        {
            return WireFault.None;
        }

        if (!line.StartsWith(opening))
        {
            return TakeWhole(line[last..], arrivalSeconds);
        }

        if (last == 0 || IsOneLine(line, line[last..]))
        {
            return TakeWhole(line, arrivalSeconds);
        }

        _placement.Lose(_layout.HasChecksum ? WireFault.Checksum : WireFault.Length, 1, 1);
        return TakeWhole(line[last..], arrivalSeconds);
    }

    // The opening may stand among the fields as well.
    private bool IsOneLine(ReadOnlySpan<byte> line, ReadOnlySpan<byte> rest) => _layout.HasChecksum
        ? TryTakeChecksum(ref line) || !TryTakeChecksum(ref rest)
        : Split(line) == _layout.Fields.Length || (Split(rest) != _layout.Fields.Length && Split(WithoutSeparator(rest[_layout.StartsWith.Length..])) != _layout.Fields.Length);

    private WireFault TakeWhole(ReadOnlySpan<byte> line, double arrivalSeconds)
    {
        if (_layout.HasChecksum && !TryTakeChecksum(ref line))
        {
            return WireFault.Checksum;
        }

        // Layouts count the opening as a field of its own or not at all; the number of fields tells which.
        var opening = _layout.StartsWith.Length;
        var fault = ReadFields(line, arrivalSeconds);
        return fault == WireFault.Length && opening > 0 ? ReadFields(WithoutSeparator(line[opening..]), arrivalSeconds) : fault;
    }

    private ReadOnlySpan<byte> WithoutSeparator(ReadOnlySpan<byte> rest) =>
        rest.StartsWith(_layout.Separator) ? rest[_layout.Separator.Length..] : rest;

    private static bool TryTakeChecksum(ref ReadOnlySpan<byte> line)
    {
        var star = line.Length - ChecksumLength;
        if (star < 0 || line[star] != '*' || !byte.TryParse(line[(star + 1)..], NumberStyles.AllowHexSpecifier, CultureInfo.InvariantCulture, out var told))
        {
            return false;
        }

        line = line[..star];
        return Checksum.Xor(line.StartsWith((byte)'$') ? line[1..] : line) == told;
    }

    private WireFault ReadFields(ReadOnlySpan<byte> line, double arrivalSeconds)
    {
        if (Split(line) != _layout.Fields.Length)
        {
            return WireFault.Length;
        }

        for (var i = 0; i < _layout.Fields.Length; i++)
        {
            var field = _layout.Fields[i];
            var text = line[_fields[i]].Trim(" \t"u8);
            if (field.Column == CsvColumn.Ignored)
            {
                continue;
            }

            if (!CsvNumber.TryRead(text, out var value, out var length) || length != text.Length || !double.IsFinite(value))
            {
                return WireFault.NotANumber;
            }

            _row[(int)field.Column] = (value * field.Scale) + field.Add;
        }

        return Place(arrivalSeconds);
    }

    private WireFault Place(double arrivalSeconds)
    {
        var counter = _row[(int)CsvColumn.Sample];
        if (!double.IsNaN(counter) && !(counter >= 0 && counter <= LargestCounter && Math.Floor(counter) == counter))
        {
            return WireFault.NotANumber;
        }

        if (SampleRow.HasNegativeCounts(_row))
        {
            return WireFault.NegativeCounts;
        }

        _placement.Take([SampleRow.SampleOf(_row)], double.IsNaN(counter) ? 0 : (long)counter, arrivalSeconds);
        return WireFault.None;
    }

    // One more than there should be is enough to see that there are too many.
    private int Split(ReadOnlySpan<byte> line)
    {
        var count = 0;
        for (var at = 0; count < _fields.Length && at <= line.Length;)
        {
            var length = _layout.Separator.Length > 0 ? line[at..].IndexOf(_layout.Separator) : line[at..].IndexOfAny(" \t"u8);
            length = length < 0 ? line.Length - at : length;
            if (_layout.Separator.Length > 0 || length > 0)
            {
                _fields[count++] = at..(at + length);
            }

            at += length + Math.Max(1, _layout.Separator.Length);
        }

        return count;
    }
}
