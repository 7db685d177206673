using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Wfdb;

/// <summary>
/// A recording in the WFDB format: a header beside files of samples, in one piece or in segments with gaps. A sample of
/// which one channel is marked invalid is missing. Samples are the physical values of the header's gain and baseline.
/// </summary>
public sealed class WfdbRecording : FileRecording
{
    private const string HeaderEnding = ".hea";
    private const string Gap = "~";

    private readonly string _folder;
    private readonly WfdbHeader _header;
    private readonly SignalChoice _choice;
    private readonly int _samplesPerFrame;
    private readonly Action<string>? _say;

    private WfdbRecording(string path, CsvOptions options, SignalMap map)
    {
        _folder = Path.GetDirectoryName(Path.GetFullPath(path))!;
        _say = options.Say;
        var source = Path.GetFileName(path);
        _header = ReadHeader(path);
        var descriptions = Descriptions();
        _choice = SignalChoice.Of(descriptions, map, source, options.Say);
        _samplesPerFrame = (int)Math.Round(_choice.RateHz / _header.FrameRateHz);
        if (_header.LocalStart is { } local && options.Start is null)
        {
            options.Say?.Invoke($"{source}: it began {local:yyyy-MM-dd'T'HH:mm:ss} where it was recorded; --start with the offset says when that was.");
        }

        Header = new RecordingHeader(source, new SampleRate(_choice.RateHz), _choice.Columns, options.FullScaleCounts, options.Start);
    }

    /// <inheritdoc/>
    public override RecordingHeader Header { get; }

    /// <summary>Opens a record.</summary>
    /// <param name="path">Its header, NAME.hea.</param>
    /// <param name="options">What is known beside the file.</param>
    /// <param name="map">Which signal carries what; names and units tell the rest.</param>
    /// <exception cref="BadInputException">It cannot be used.</exception>
    public static WfdbRecording Open(string path, CsvOptions options, SignalMap map)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(map);
        return new WfdbRecording(path, options, map);
    }

    /// <inheritdoc/>
    protected override IEnumerable<(long Index, Sample Sample)> Samples()
    {
        IReadOnlyList<WfdbSegment> segments = _header.Segments.Count > 0 ? _header.Segments : [new WfdbSegment("", _header.Frames ?? 0)];
        var firstFrame = 0L;
        foreach (var segment in segments)
        {
            if (segment.Name != Gap && (segment.Frames > 0 || _header.Segments.Count == 0))
            {
                var piece = segment.Name.Length == 0 ? _header : ReadHeader(Path.Combine(_folder, Path.GetFileName(segment.Name) + HeaderEnding));
                foreach (var found in Piece(piece, firstFrame * _samplesPerFrame, segment.Frames > 0 ? segment.Frames : long.MaxValue))
                {
                    yield return found;
                }
            }

            firstFrame += segment.Frames;
        }

        EndIndex = Math.Max(EndIndex, firstFrame * _samplesPerFrame);
    }

    private IEnumerable<(long Index, Sample Sample)> Piece(WfdbHeader piece, long firstIndex, long frames)
    {
        if (SignalsOf(piece) is not { } signals)
        {
            yield break;
        }

        using var reader = new WfdbFrames(piece, _folder, Header.Source, signals.Select(signal => signal.Index));
        var values = new double[Channels.Count];
        var frame = 0L;
        for (; frame < frames && reader.TryRead(); frame++)
        {
            for (var i = 0; i < _samplesPerFrame; i++)
            {
                if (TryTake(reader, signals, i, values))
                {
                    yield return (firstIndex + (frame * _samplesPerFrame) + i, Channels.SampleOf(values));
                }
            }
        }

        TellOfDamage(reader, piece, frame, frames);
    }

    private static bool TryTake(WfdbFrames reader, IReadOnlyList<ChosenSignal> signals, int i, double[] values)
    {
        Array.Fill(values, double.NaN);
        var isWhole = true;
        foreach (var signal in signals)
        {
            var value = reader[signal.Index][i] * signal.Scale;
            values[(int)signal.Channel] = value;

            // Acceleration may be missing; counts of light cannot be below nothing.
            isWhole &= signal.Channel >= Channel.AccelerationX || (signal.Channel == Channel.Pleth ? double.IsFinite(value) : value >= 0);
        }

        return isWhole;
    }

    private void TellOfDamage(WfdbFrames reader, WfdbHeader piece, long frame, long frames)
    {
        if (frames < long.MaxValue && frame < frames)
        {
            _say?.Invoke($"{Header.Source}: the header tells of {frames} frames, its files end after {frame}; the rest is missing.");
        }
        else if (piece.Frames == frame && reader.ChangedSignals().ToList() is { Count: > 0 } changed)
        {
            _say?.Invoke($"{Header.Source}: the sum of all samples is not the one in the header: {string.Join(", ", changed)}. The file may have been changed.");
        }
    }

    // A segment has the signals that were connected then, in any order; without light it is a gap.
    private IReadOnlyList<ChosenSignal>? SignalsOf(WfdbHeader piece)
    {
        if (ReferenceEquals(piece, _header))
        {
            return _choice.Signals;
        }

        var found = new List<ChosenSignal>();
        foreach (var signal in _choice.Signals)
        {
            var name = Descriptions()[signal.Index].Name;
            var index = piece.Signals.ToList().FindIndex(other => string.Equals(other.Name, name, StringComparison.Ordinal) && other.SamplesPerFrame == _samplesPerFrame);
            if (index < 0)
            {
                return null;
            }

            found.Add(signal with { Index = index });
        }

        return found;
    }

    private IReadOnlyList<SignalDescription> Descriptions() => _descriptions ??=
    [
        .. SignalsOfRecord().Select(signal => new SignalDescription(signal.Name, signal.Unit, signal.SamplesPerFrame * _header.FrameRateHz)),
    ];

    private IReadOnlyList<SignalDescription>? _descriptions;

    // A layout segment, or else every segment together, tells which signals there are.
    private IEnumerable<WfdbSignal> SignalsOfRecord() => _header.Segments.Count == 0
        ? _header.Signals
        : _header.Segments
            .Where(segment => segment.Name != Gap)
            .Select(segment => Path.Combine(_folder, Path.GetFileName(segment.Name) + HeaderEnding))
            .Where(File.Exists)
            .SelectMany(path => ReadHeader(path).Signals)
            .DistinctBy(signal => signal.Name, StringComparer.Ordinal);

    private static WfdbHeader ReadHeader(string path)
    {
        try
        {
            return WfdbHeaderText.Parse(File.ReadAllText(path), Path.GetFileName(path));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw CsvFailures.Unreadable(path, e);
        }
    }
}
