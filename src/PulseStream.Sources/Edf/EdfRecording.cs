using System.Buffers.Binary;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Edf;

/// <summary>
/// A recording in EDF or EDF+. Records of EDF+D that lie apart leave a gap. A sample outside the digital limits of its
/// signal is missing: EDF has no other word for it.
/// </summary>
public sealed class EdfRecording : FileRecording
{
    private readonly FileStream _stream;
    private readonly EdfHeader _header;
    private readonly SignalChoice _choice;
    private readonly Action<string>? _say;

    private EdfRecording(FileStream stream, string path, CsvOptions options, SignalMap map)
    {
        _stream = stream;
        _say = options.Say;
        var source = Path.GetFileName(path);
        _header = EdfHeaderReader.Read(stream, source);
        if (!(_header.RecordSeconds > 0))
        {
            throw new BadInputException(source, $"its records last {_header.RecordSeconds} s: it holds annotations and no signals", "Give a recording with signals");
        }

        _choice = SignalChoice.Of([.. _header.Signals.Select(DescriptionOf)], map, source, options.Say);
        CheckLimits(source);
        if (_header.LocalStart is { } local && options.Start is null)
        {
            options.Say?.Invoke($"{source}: it began {local:yyyy-MM-dd'T'HH:mm:ss} where it was recorded; --start with the offset says when that was.");
        }

        Header = new RecordingHeader(source, new SampleRate(_choice.RateHz), _choice.Columns, options.FullScaleCounts, options.Start);
    }

    /// <inheritdoc/>
    public override RecordingHeader Header { get; }

    /// <summary>Opens a file.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">What is known beside the file.</param>
    /// <param name="map">Which signal carries what; names and units tell the rest.</param>
    /// <exception cref="BadInputException">It cannot be used.</exception>
    public static EdfRecording Open(string path, CsvOptions options, SignalMap map)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(map);
        FileStream stream;
        try
        {
            stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw CsvFailures.Unreadable(path, e);
        }

        try
        {
            return new EdfRecording(stream, path, options, map);
        }
        catch
        {
            stream.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    protected override IEnumerable<(long Index, Sample Sample)> Samples()
    {
        var record = new byte[_header.RecordBytes];
        var perRecord = _header.Signals[_choice.Signals[0].Index].SamplesPerRecord;
        var values = new double[Channels.Count];
        double? firstOnset = null;
        var next = 0L;
        for (var count = 0L; count < (_header.Records ?? long.MaxValue); count++)
        {
            if (_stream.ReadAtLeast(record, record.Length, throwOnEndOfStream: false) < record.Length)
            {
                TellOfCut(count);
                break;
            }

            var onset = OnsetOf(record) ?? (count * _header.RecordSeconds);
            firstOnset ??= onset;
            var first = _header.IsDiscontinuous ? Header.Rate.Hz * (onset - firstOnset.Value) : next;
            next = Math.Max(next, (long)Math.Round(first));
            for (var i = 0; i < perRecord; i++)
            {
                if (TryTake(record, i, values))
                {
                    yield return (next + i, Channels.SampleOf(values));
                }
            }

            next += perRecord;
        }

        EndIndex = Math.Max(EndIndex, next);
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing)
        {
            _stream.Dispose();
        }

        base.Dispose(disposing);
    }

    private bool TryTake(byte[] record, int i, double[] values)
    {
        Array.Fill(values, double.NaN);
        var isWhole = true;
        foreach (var signal in _choice.Signals)
        {
            var digital = BinaryPrimitives.ReadInt16LittleEndian(record.AsSpan(2 * (FirstOf(signal.Index) + i)));
            var value = _header.Signals[signal.Index].PhysicalOf(digital) * signal.Scale;
            values[(int)signal.Channel] = value;

            // Acceleration may be missing; counts of light cannot be below nothing.
            isWhole &= signal.Channel >= Channel.AccelerationX || (signal.Channel == Channel.Pleth ? double.IsFinite(value) : value >= 0);
        }

        return isWhole;
    }

    private double? OnsetOf(byte[] record)
    {
        var index = _header.IsPlus ? _header.Signals.ToList().FindIndex(signal => signal.IsAnnotations) : -1;
        return index >= 0 && EdfAnnotationLists.Read(record.AsSpan(2 * FirstOf(index), 2 * _header.Signals[index].SamplesPerRecord)) is [var first, ..]
            ? first.OnsetSeconds
            : null;
    }

    private int FirstOf(int signal) => _header.Signals.Take(signal).Sum(before => before.SamplesPerRecord);

    private void TellOfCut(long count)
    {
        if (_header.Records is { } told)
        {
            _say?.Invoke($"{Header.Source}: the header tells of {told} records, the file ends after {count}.");
        }
    }

    private SignalDescription DescriptionOf(EdfSignal signal) =>
        new(signal.IsAnnotations ? "" : signal.Label, signal.Unit, signal.SamplesPerRecord / _header.RecordSeconds);

    private void CheckLimits(string source)
    {
        if (_choice.Signals.Select(chosen => _header.Signals[chosen.Index]).FirstOrDefault(signal => signal.DigitalMax <= signal.DigitalMin || signal.PhysicalMax == signal.PhysicalMin) is { } bad)
        {
            throw new BadInputException(source, $"signal '{bad.Label}' has the digital limits {bad.DigitalMin} to {bad.DigitalMax} and the physical limits {bad.PhysicalMin} to {bad.PhysicalMax}", "Correct the header and run again");
        }
    }
}
