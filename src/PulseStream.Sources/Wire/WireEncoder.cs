using System.Text;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Wire.Framing;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Wire;

/// <summary>Says samples as an instrument with a layout would: what <see cref="WireDecoder"/> reads back, rounded to the layout's steps.</summary>
/// <param name="layout">What the instrument says.</param>
public sealed class WireEncoder(WireLayout layout)
{
    private readonly List<Sample> _waiting = [];
    private long _firstIndex;

    /// <summary>Says a sample.</summary>
    /// <param name="index">Its index, later than the one before; a jump is a gap, and a frame that it leaves unfinished is not sent.</param>
    /// <param name="sample">Its values; what the layout carries and the sample does not is said as 0.</param>
    /// <returns>Bytes for the wire; none before the frame is full.</returns>
    public byte[] Say(long index, in Sample sample)
    {
        if (layout.Text is { } text)
        {
            return Line(text, index, sample);
        }

        if (_waiting.Count == 0 || index != _firstIndex + _waiting.Count)
        {
            _waiting.Clear();
            _firstIndex = index;
        }

        _waiting.Add(sample);
        return _waiting.Count == layout.Binary!.SampleCount ? Frame(layout.Binary) : [];
    }

    private byte[] Frame(BinaryLayout binary)
    {
        var frame = new byte[binary.Length];
        binary.Sync.CopyTo(frame, 0);
        for (var i = 0; i < _waiting.Count; i++)
        {
            foreach (var field in binary.Fields)
            {
                Write(binary, field, frame, i);
            }
        }

        _waiting.Clear();
        binary.Checksum.Write(frame);
        return binary.Frame switch
        {
            FrameKind.Cobs => [.. Cobs.Encode(frame), 0],
            FrameKind.Slip => [Slip.End, .. Slip.Encode(frame), Slip.End],
            _ => frame,
        };
    }

    private void Write(BinaryLayout binary, WireField field, Span<byte> frame, int sample)
    {
        if (field.IsPerFrame && sample > 0)
        {
            return;
        }

        var at = binary.BaseOf(field, sample);
        var index = _firstIndex + sample;
        if (field.Column == CsvColumn.Sample)
        {
            field.WriteRaw(frame, at, index / (long)field.Scale);
        }
        else if (field.Column != CsvColumn.Ignored)
        {
            var value = field.Column == CsvColumn.Time ? layout.Rate.SecondsAt(index) : SampleRow.ValueOf(field.Column, _waiting[sample]);
            field.Write(frame, at, double.IsNaN(value) ? 0 : value);
        }
    }

    private byte[] Line(TextLayout text, long index, Sample sample)
    {
        var separator = text.Separator.Length == 0 ? " " : Encoding.UTF8.GetString(text.Separator);
        var opening = Encoding.UTF8.GetString(text.StartsWith);
        var fields = text.Fields.Select((field, at) => at == 0 && field.Column == CsvColumn.Ignored ? opening : Number(field, index, sample)).ToArray();

        // Skipped as a field of its own, or put before the first one.
        var line = string.Join(separator, fields);
        line = line.StartsWith(opening, StringComparison.Ordinal) ? line : opening + (opening.EndsWith(separator, StringComparison.Ordinal) ? "" : separator) + line;
        var bytes = Encoding.UTF8.GetBytes(line);
        var summed = bytes.AsSpan(line.StartsWith('$') ? 1 : 0);
        return text.HasChecksum ? Encoding.UTF8.GetBytes($"{line}*{Checksum.Xor(summed):X2}\r\n") : [.. bytes, (byte)'\r', (byte)'\n'];
    }

    private string Number(TextField field, long index, in Sample sample)
    {
        var value = field.Column switch
        {
            CsvColumn.Sample => index,
            CsvColumn.Time => layout.Rate.SecondsAt(index),
            _ => SampleRow.ValueOf(field.Column, sample),
        };
        return $"{((double.IsNaN(value) ? 0 : value) - field.Add) / field.Scale}";
    }
}
