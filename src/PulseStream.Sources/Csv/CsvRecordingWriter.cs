using PulseStream.Samples;

namespace PulseStream.Sources.Csv;

/// <summary>
/// Writes a recording as CSV that <see cref="CsvRecording"/> reads back as the same samples: 'sample', 'time_s' and the
/// columns told, LF line ends, numbers in the shortest form that reads back equal. A gap shows as a jump of 'sample'.
/// </summary>
public sealed class CsvRecordingWriter
{
    // The longest double, -1.7976931348623157E+308, has 24 characters; so do the longest index and a comma.
    private const int LongestField = 32;

    private readonly TextWriter _text;
    private readonly SampleRate _rate;
    private readonly CsvColumn[] _columns;
    private readonly char[] _row;
    private int _length;

    /// <summary>Writes the header line.</summary>
    /// <param name="text">Where to; stays open, and is neither flushed nor closed here.</param>
    /// <param name="columns">Which values to write; the samples must carry them.</param>
    /// <param name="rate">Sample rate of the indices.</param>
    public CsvRecordingWriter(TextWriter text, SampleColumns columns, SampleRate rate)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(rate);
        (_text, _rate, _columns) = (text, rate, CsvColumnNames.Carrying(columns));
        CsvColumn[] all = [CsvColumn.Sample, CsvColumn.Time, .. _columns];
        _row = new char[all.Length * LongestField];
        _text.Write($"{string.Join(',', all.Select(CsvColumnNames.Of))}\n");
    }

    /// <summary>Writes one row a sample.</summary>
    /// <param name="block">Follows the block before it, with or without a gap.</param>
    public void Write(SampleBlock block)
    {
        var index = block.FirstIndex;
        foreach (ref readonly var sample in block.Samples.Span)
        {
            WriteRow(index++, sample);
        }
    }

    private void WriteRow(long index, in Sample sample)
    {
        _length = 0;
        Append(index);
        Append(_rate.SecondsAt(index));
        foreach (var column in _columns)
        {
            Append(ValueOf(column, sample));
        }

        _row[_length - 1] = '\n';
        _text.Write(_row.AsSpan(0, _length));
    }

    private void Append<T>(T value)
        where T : ISpanFormattable
    {
        // A field always fits, as LongestField says.
        value.TryFormat(_row.AsSpan(_length), out var written, default, null);
        _length += written;
        _row[_length++] = ',';
    }

    private static double ValueOf(CsvColumn column, in Sample sample) => column switch
    {
        CsvColumn.Red => sample.Red,
        CsvColumn.Infrared => sample.Infrared,
        CsvColumn.Ambient => sample.Ambient,
        CsvColumn.Pleth => sample.Pleth,
        CsvColumn.AccelerationX => sample.AccelerationX,
        CsvColumn.AccelerationY => sample.AccelerationY,
        CsvColumn.AccelerationZ => sample.AccelerationZ,
        _ => throw new ArgumentOutOfRangeException(nameof(column), column, "Not a value of a sample."),
    };
}
