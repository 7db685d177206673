using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using PulseStream.Samples;
using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Edf;

/// <summary>
/// Writes a recording as EDF+: 16-bit samples, nobody named. Counts that lie within 65,534 of each other read back equal;
/// wider ranges are divided evenly. A missing sample is -32768, below the digital minimum, and each gap has an annotation;
/// records without a sample are left out, which makes the file discontinuous (EDF+D).
/// </summary>
public sealed class EdfRecordingWriter : IDisposable
{
    // Room in each record for its onset and a few annotations of gaps.
    private const int GapSamples = 60;
    private const string MissingText = "missing samples";

    private readonly RecordingHeader _header;
    private readonly RecordingScan _scan;
    private readonly Channel[] _channels;
    private readonly EdfScale[] _scales;
    private readonly EdfGrid _grid;
    private readonly FileStream _stream;
    private readonly short[] _record;
    private readonly Queue<EdfAnnotation> _annotations = new();
    private readonly Queue<EdfAnnotation> _notes;
    private readonly int _annotationSamples;
    private long _recordIndex;
    private long _next;
    private long _records;
    private bool _hasSample;
    private bool _isDiscontinuous;

    /// <summary>Begins a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="header">The recording.</param>
    /// <param name="scan">What a first reading of it found.</param>
    /// <param name="notes">What is said beside the samples, as annotations; beats are left out.</param>
    public EdfRecordingWriter(string path, RecordingHeader header, RecordingScan scan, IReadOnlyList<RecordingNote> notes)
    {
        ArgumentNullException.ThrowIfNull(notes);
        ArgumentNullException.ThrowIfNull(header);
        ArgumentNullException.ThrowIfNull(scan);
        (_header, _scan) = (header, scan);
        _channels = [.. Channels.Of(header.Columns)];
        _scales = [.. _channels.Select(channel => EdfScale.Of(scan.Ranges[channel]))];
        _grid = EdfGrid.Of(header.Rate.Hz);
        _record = new short[_channels.Length * _grid.SamplesPerRecord];
        _notes = new(notes.Where(note => note.Text is not null).OrderBy(note => note.Index).Select(note => new EdfAnnotation(header.Rate.SecondsAt(note.Index), null, [note.Text!])));
        _annotationSamples = GapSamples + (MostNoteBytes() / 2);
        Array.Fill(_record, short.MinValue);
        _stream = new FileStream(path, FileMode.Create, FileAccess.Write, FileShare.None, 64 * 1024);
        WriteHeader();
    }

    /// <summary>The coarsest step of a channel that does not read back as it was, in its unit; null where all do.</summary>
    public double? CoarsestStep => _channels
        .Select((channel, i) => _scales[i].IsExactFor(_scan.Ranges[channel]) ? (double?)null : _scales[i].Step)
        .Max();

    /// <summary>Writes samples.</summary>
    /// <param name="block">Follows the block before it.</param>
    public void Write(SampleBlock block)
    {
        if (block.FirstIndex > _next)
        {
            _annotations.Enqueue(new EdfAnnotation(_header.Rate.SecondsAt(_next), _header.Rate.SecondsAt(block.FirstIndex - _next), [MissingText]));
        }

        _next = block.FirstIndex;
        foreach (ref readonly var sample in block.Samples.Span)
        {
            GoTo(_next / _grid.SamplesPerRecord);
            var at = (int)(_next % _grid.SamplesPerRecord);
            for (var i = 0; i < _channels.Length; i++)
            {
                _record[(i * _grid.SamplesPerRecord) + at] = _scales[i].DigitalOf(Channels.ValueOf(in sample, _channels[i]));
            }

            _hasSample = true;
            _next++;
        }
    }

    /// <summary>Writes the last record and the header: the file is whole.</summary>
    public void Finish()
    {
        GoTo(_recordIndex + 1);
        _stream.Position = 0;
        WriteHeader();
        _stream.Flush(flushToDisk: true);
    }

    /// <inheritdoc/>
    public void Dispose() => _stream.Dispose();

    private void GoTo(long recordIndex)
    {
        if (recordIndex == _recordIndex)
        {
            return;
        }

        // The first record is written in any case: it is where the file starts.
        if (_hasSample || _recordIndex == 0)
        {
            WriteRecord();
        }

        _isDiscontinuous |= _records > 0 && recordIndex != _recordIndex + 1;
        (_recordIndex, _hasSample) = (recordIndex, false);
    }

    private void WriteRecord()
    {
        Span<byte> bytes = new byte[2 * (_record.Length + _annotationSamples)];
        for (var i = 0; i < _record.Length; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(bytes[(2 * i)..], _record[i]);
        }

        var room = bytes[(2 * _record.Length)..];
        var used = Put(room, new EdfAnnotation(_header.Rate.SecondsAt(_recordIndex * _grid.SamplesPerRecord), null, []));
        var end = _header.Rate.SecondsAt((_recordIndex + 1) * _grid.SamplesPerRecord);
        while (_notes.TryPeek(out var note) && note.OnsetSeconds < end)
        {
            used += Put(room[used..], _notes.Dequeue());
        }

        while (_annotations.TryPeek(out var annotation) && EdfAnnotationLists.Write(annotation).Length <= room.Length - used)
        {
            used += Put(room[used..], _annotations.Dequeue());
        }

        _stream.Write(bytes);
        Array.Fill(_record, short.MinValue);
        _records++;
    }

    // What is said of a record that is left out stands in the next one, so there must be room for both.
    private int MostNoteBytes()
    {
        var bytes = _notes.GroupBy(note => (long)(note.OnsetSeconds * _header.Rate.Hz) / _grid.SamplesPerRecord).Select(record => record.Sum(note => EdfAnnotationLists.Write(note).Length)).ToList();
        return 2 * bytes.DefaultIfEmpty().Max();
    }

    private static int Put(Span<byte> room, EdfAnnotation annotation)
    {
        var bytes = EdfAnnotationLists.Write(annotation);
        bytes.CopyTo(room);
        return bytes.Length;
    }

    private void WriteHeader()
    {
        var (date, time, startDate) = _header.Start is { } start
            ? (start.ToString("dd.MM.yy", CultureInfo.InvariantCulture), start.ToString("HH.mm.ss", CultureInfo.InvariantCulture), start.ToString("dd-MMM-yyyy", CultureInfo.InvariantCulture).ToUpperInvariant())
            : ("01.01.85", "00.00.00", "X");
        var signals = _channels.Length + 1;
        var text = new StringBuilder();
        Add(8, "0");
        Add(80, "X X X X");
        Add(80, $"Startdate {startDate} X X X");
        Add(8, date);
        Add(8, time);
        Add(8, $"{256 * (signals + 1)}");
        Add(44, _isDiscontinuous ? "EDF+D" : "EDF+C");
        Add(8, $"{(_records == 0 ? -1 : _records)}");
        Add(8, _grid.Seconds);
        Add(4, $"{signals}");
        Each(16, i => Channels.NameOf(_channels[i]), EdfSignal.Annotations);
        Each(80, _ => "", "");
        Each(8, i => Channels.UnitOf(_channels[i]), "");
        Each(8, i => _scales[i].PhysicalMin, "-1");
        Each(8, i => _scales[i].PhysicalMax, "1");
        Each(8, _ => $"{EdfScale.DigitalMin}", $"{short.MinValue}");
        Each(8, _ => $"{EdfScale.DigitalMax}", $"{short.MaxValue}");
        Each(80, _ => "", "");
        Each(8, _ => $"{_grid.SamplesPerRecord}", $"{_annotationSamples}");
        Each(32, _ => "", "");
        _stream.Write(Encoding.ASCII.GetBytes(text.ToString()));

        void Add(int length, string field) => text.Append(field.PadRight(length), 0, length);

        void Each(int length, Func<int, string> field, string ofAnnotations)
        {
            for (var i = 0; i < _channels.Length; i++)
            {
                Add(length, field(i));
            }

            Add(length, ofAnnotations);
        }
    }
}
