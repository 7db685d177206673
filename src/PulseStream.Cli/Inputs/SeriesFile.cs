using System.Text;
using PulseStream.Accuracy.Runs;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Inputs;

/// <summary>Reads what an instrument showed over time: from a series, or from a recording that the pipeline reads.</summary>
internal static class SeriesFile
{
    private static readonly string[] Lights = ["infrared", "pleth"];

    /// <summary>Reads a series, or makes one from a recording.</summary>
    /// <param name="path">File, session folder, or - for standard input.</param>
    /// <param name="input">Standard input.</param>
    /// <param name="curve">Curve for a recording.</param>
    /// <param name="say">Hears diagnostics.</param>
    /// <param name="cancel">Ends it early.</param>
    public static Series Read(string path, Stream input, CalibrationCurve curve, Action<string> say, CancellationToken cancel)
    {
        if (Directory.Exists(path))
        {
            using var session = RecordingPaths.Open(path, input, new CsvOptions(null, null, null, say), SignalMap.Empty, cancel);
            return FromRecording(session, path, curve, cancel);
        }

        var bytes = TableFile.Read(path, input);
        if (!HasLight(bytes.Span))
        {
            return Series.Read(bytes, path, say);
        }

        using var samples = new MemoryStream(bytes.ToArray());
        using var opened = new OpenedRecording(CsvRecording.Open(samples, path, new CsvOptions(null, null, null, say), cancel), Session: null, IsLive: false);
        return FromRecording(opened, path, curve, cancel);
    }

    /// <summary>Whether a file holds light, for the pipeline, and not what an instrument showed.</summary>
    /// <param name="path">A CSV file.</param>
    public static bool IsRecording(string path) => HasLight(TableFile.Read(path, Stream.Null).Span);

    private static bool HasLight(ReadOnlySpan<byte> bytes)
    {
        var end = bytes.IndexOf((byte)'\n');
        return Encoding.UTF8.GetString(end < 0 ? bytes : bytes[..end]).TrimStart('\uFEFF').Split(',')
            .Any(name => Lights.Contains(name.Trim().Trim('"'), StringComparer.OrdinalIgnoreCase));
    }

    private static Series FromRecording(OpenedRecording opened, string path, CalibrationCurve curve, CancellationToken cancel)
    {
        var reader = new FingerReader(opened.Recording.Header, curve, new ReadingOptions());
        var shown = new Shown();
        using (opened.Recording.Blocks(cancel).Subscribe(block => reader.Read(block, shown)))
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
        public void OnSecond(Second second)
        {
            if (second is UsableSecond { Spo2: { } spo2 })
            {
                Saturation.Add((second.SecondIndex + 1, spo2.Percent));
            }

            if (second is UsableSecond { PulseRatePerMinute: { } pulse })
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
