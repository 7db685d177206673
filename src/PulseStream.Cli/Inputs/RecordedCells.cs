using PulseStream.Accuracy.Runs;
using PulseStream.Accuracy.Tables;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Simulation;
using PulseStream.Sources;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;
using PulseStream.Sweeps;

namespace PulseStream.Cli.Inputs;

/// <summary>
/// Recorded cells in a folder: `NAME.csv`, `.hea` or `.edf`, a recording for the pipeline or the series (CSV) that a device
/// showed, with its truth in `NAME.truth.csv`: second, spo2, pulse, optionally perfusion, motion, noise, rate. Coordinates are
/// the truth's medians.
/// </summary>
/// <param name="curve">Curve for recordings.</param>
/// <param name="wrongPoints">A reading farther off than this is wrong.</param>
/// <param name="options">What is known beside recordings; hears diagnostics.</param>
/// <param name="map">Which signal of a recording carries what.</param>
internal sealed class RecordedCells(CalibrationCurve curve, double wrongPoints, CsvOptions options, SignalMap map)
{
    private const double Largest = 1e6;

    private static readonly string[] Endings = [".csv", ".hea", ".edf"];

    private static readonly string[] Known = ["spo2", "pulse", "perfusion", "motion", "noise", "rate", "finger", "disturbances"];

    /// <summary>Every recording that has its truth beside it, by name.</summary>
    public IReadOnlyList<SweepRun> Read(string folder, CancellationToken cancel)
    {
        if (!Directory.Exists(folder))
        {
            throw new BadInputException(folder, "there is no such folder", "Check the path and run again");
        }

        var recordings = RecordingsIn(folder);
        return recordings.Length > 0
            ? [.. recordings.Select(path => ReadOne(path, cancel)).GroupBy(run => run.Point).SelectMany(cell => cell.Select((run, i) => run with { Number = i }))]
            : throw new BadInputException(folder, "no recording NAME.csv, .hea or .edf with its truth NAME.truth.csv beside it", "Put them there and run again");
    }

    private static string[] RecordingsIn(string folder)
    {
        string[] recordings =
        [
            .. Directory.GetFiles(folder).Where(path => Endings.Contains(Path.GetExtension(path), StringComparer.OrdinalIgnoreCase))
                .Where(path => File.Exists(TruthText.SecondsPath(path))).Order(StringComparer.Ordinal),
        ];
        return recordings.GroupBy(TruthText.SecondsPath, StringComparer.Ordinal).FirstOrDefault(same => same.Count() > 1) is { } shared
            ? throw new BadInputException(shared.Key, $"expected the truth of one recording, found {string.Join(" and ", shared.Select(Path.GetFileName))} beside it", "Keep one of them, or give each a truth of its own")
            : recordings;
    }

    private SweepRun ReadOne(string path, CancellationToken cancel)
    {
        var truthPath = TruthText.SecondsPath(path);
        var truth = TextTable.Parse(TableFile.Read(truthPath, Stream.Null), truthPath, ["second", "spo2"], Known);
        var seconds = SecondsOf(truth);
        var tally = new RunTally(second => seconds.GetValueOrDefault(second, (double.NaN, double.NaN)), wrongPoints);
        var point = new SweepPoint(MedianOf(truth, "spo2"), MedianOf(truth, "perfusion"), MedianOf(truth, "pulse"), MedianOf(truth, "motion"), MedianOf(truth, "noise"), MedianOf(truth, "rate"));
        var rate = SeriesFile.IsRecording(path) ? Replay(path, tally, cancel) : Compare(path, seconds.Keys, tally, cancel);
        return tally.ToRun(double.IsNaN(point.Rate) ? point with { Rate = rate } : point, 0);
    }

    private static Dictionary<long, (double Spo2, double Pulse)> SecondsOf(TextTable truth)
    {
        var seconds = new Dictionary<long, (double Spo2, double Pulse)>();
        foreach (var row in truth.Rows)
        {
            var second = (long)row.Number("second", 0, Largest);
            if (!seconds.TryAdd(second, (row.NumberOrNull("spo2", 0, 100) ?? double.NaN, row.NumberOrNull("pulse", 0, Largest) ?? double.NaN)))
            {
                throw row.Wrong($"second {second} stands there twice");
            }
        }

        return seconds;
    }

    private double Replay(string path, RunTally tally, CancellationToken cancel)
    {
        using var recording = RecordingFile.Open(path, options, map, cancel);
        var reader = new FingerReader(recording.Header, curve, new ReadingOptions());
        using (recording.Blocks(cancel).Subscribe(block => reader.Read(block, tally)))
        {
            cancel.ThrowIfCancellationRequested();
            reader.Finish(tally);
        }

        return recording.Header.Rate.Hz;
    }

    // What a device showed at the end of a second is what it says of that second.
    private double Compare(string path, IEnumerable<long> seconds, RunTally tally, CancellationToken cancel)
    {
        var series = new SeriesFile(Stream.Null, curve, options, map).Read(path, cancel);
        foreach (var second in seconds.Order())
        {
            tally.Add(second, Shown(series.Saturation, second + 1), Shown(series.PulseRate, second + 1));
        }

        return double.NaN;
    }

    private static double? Shown(TimedValues? course, double seconds) => course?.At(seconds) is { } value && !double.IsNaN(value) ? value : null;

    private static double MedianOf(TextTable truth, string column)
    {
        double[] sorted = [.. truth.Rows.Select(row => row.NumberOrNull(column, 0, Largest)).OfType<double>().Order()];
        return sorted.Length == 0 ? double.NaN : sorted[sorted.Length / 2];
    }
}
