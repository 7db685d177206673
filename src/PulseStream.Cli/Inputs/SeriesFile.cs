using System.Text;
using PulseStream.Accuracy.Runs;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Sources;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Inputs;

/// <summary>Reads what an instrument showed over time: from a series, or from a recording that the pipeline reads.</summary>
/// <param name="input">Standard input.</param>
/// <param name="curve">Curve for a recording.</param>
/// <param name="options">What is known beside a recording; hears diagnostics.</param>
/// <param name="map">Which signal of a recording carries what.</param>
internal sealed class SeriesFile(Stream input, CalibrationCurve curve, CsvOptions options, SignalMap map)
{
    private const string ParquetEnding = ".parquet";

    private static readonly string[] Lights = ["infrared", "pleth"];

    /// <summary>Reads a series, or makes one from a recording.</summary>
    /// <param name="path">File, session folder, or - for standard input.</param>
    /// <param name="cancel">Ends it early.</param>
    public Series Read(string path, CancellationToken cancel)
    {
        if (IsNamedAsRecording(path))
        {
            return FromRecording(path, cancel);
        }

        var bytes = TableFile.Read(path, input);
        if (!HasLight(bytes.Span))
        {
            return Series.Read(bytes, path, options.Say ?? (static _ => { }));
        }

        using var samples = new MemoryStream(bytes.ToArray());
        using var recording = CsvRecording.Open(samples, path, options, cancel);
        return FromRecording(recording, path, cancel);
    }

    /// <summary>Whether a file holds light, for the pipeline, and not what an instrument showed.</summary>
    /// <param name="path">A file.</param>
    public static bool IsRecording(string path) => IsNamedAsRecording(path) || HasLight(TableFile.Read(path, Stream.Null).Span);

    // A folder is a session; whatever is no text by its name is a recording.
    private static bool IsNamedAsRecording(string path) => path != RecordingPaths.StandardInput
        && (Directory.Exists(path) || path.EndsWith(ParquetEnding, StringComparison.OrdinalIgnoreCase) || RecordingFile.FormatOf(path) is RecordingFormat.Wfdb or RecordingFormat.Edf);

    private static bool HasLight(ReadOnlySpan<byte> bytes)
    {
        var end = bytes.IndexOf((byte)'\n');
        return Encoding.UTF8.GetString(end < 0 ? bytes : bytes[..end]).TrimStart('\uFEFF').Split(',')
            .Any(name => Lights.Contains(name.Trim().Trim('"'), StringComparer.OrdinalIgnoreCase));
    }

    private Series FromRecording(string path, CancellationToken cancel)
    {
        using var opened = RecordingPaths.Open(path, input, options, map, cancel);
        return FromRecording(opened.Recording, path, cancel);
    }

    private Series FromRecording(Recording recording, string path, CancellationToken cancel)
    {
        var reader = new FingerReader(recording.Header, curve, new ReadingOptions());
        var shown = new Shown();
        using (recording.Blocks(cancel).Subscribe(block => reader.Read(block, shown)))
        {
            cancel.ThrowIfCancellationRequested();
            reader.Finish(shown);
        }

        return shown.Saturation.Count + shown.PulseRate.Count > 0
            ? new(CourseOf(shown.Saturation), CourseOf(shown.PulseRate))
            : throw new BadInputException(path, "the pipeline found no usable second in it", "Run replay on it to see why");
    }

    private static TimedValues? CourseOf(List<(double Time, double Value)> shown) =>
        shown.Count == 0 ? null : new([.. shown.Select(point => point.Time)], [.. shown.Select(point => point.Value)]);

    private sealed class Shown : IReadingObserver
    {
        public List<(double Time, double Value)> Saturation { get; } = [];

        public List<(double Time, double Value)> PulseRate { get; } = [];

        // A second is known at its end.
        public void OnSecond(in Second second)
        {
            if (second.Usable?.Spo2 is { } spo2)
            {
                Saturation.Add((second.SecondIndex + 1, spo2.Percent));
            }

            if (second.Usable?.PulseRatePerMinute is { } pulse)
            {
                PulseRate.Add((second.SecondIndex + 1, pulse));
            }
        }

        public void OnBeat(in Beat beat)
        {
        }

        public void OnReading(Reading reading)
        {
        }

        public void OnSitting(Sitting sitting)
        {
        }
    }
}
