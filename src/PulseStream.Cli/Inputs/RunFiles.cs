using PulseStream.Accuracy;
using PulseStream.Accuracy.Runs;
using PulseStream.Accuracy.Tables;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Inputs;

/// <summary>Runs of a device beside a reference, each two series, turned into pairs.</summary>
/// <param name="rule">When a reference is steady.</param>
/// <param name="quantity">What is compared.</param>
/// <param name="input">Standard input.</param>
/// <param name="say">Hears diagnostics.</param>
internal sealed class RunFiles(PlateauRule rule, Quantity quantity, Stream input, Action<string> say)
{
    private readonly SeriesFile _series = new(input, CalibrationCurve.TextbookLine, new CsvOptions(Say: say), SignalMap.Empty);
    private readonly List<PairedReading> _pairs = [];
    private readonly List<(string Subject, Lag Lag, int Pairs)> _runs = [];

    /// <summary>The pairs of all runs so far.</summary>
    public IReadOnlyList<PairedReading> Pairs => _pairs;

    /// <summary>Each run with its lag and how many pairs it gave.</summary>
    public IReadOnlyList<(string Subject, Lag Lag, int Pairs)> Runs => _runs;

    /// <summary>Reads the runs that a table lists: columns `subject`, `device`, `reference`, optionally `skin_tone` and `site`; paths are relative to the table.</summary>
    public void ReadList(string path)
    {
        var table = TextTable.Parse(TableFile.Read(path, input), path, ["subject", "device", "reference"], ["skin_tone", "site"]);
        var folder = Path.GetDirectoryName(Path.GetFullPath(path)) ?? "";
        foreach (var row in table.Rows)
        {
            Read(row.Text("subject"), Path.Combine(folder, row.Text("device")), Path.Combine(folder, row.Text("reference")), row.TextOrNull("skin_tone"), row.TextOrNull("site"));
        }
    }

    /// <summary>Reads one run.</summary>
    public void Read(string subject, string devicePath, string referencePath, string? skinTone = null, string? site = null)
    {
        var device = CourseOf(devicePath);
        var reference = CourseOf(referencePath);
        var run = AlignedRun.Of(subject, device, reference, rule);
        if (run.Pairs.Count == 0)
        {
            throw new BadInputException(
                referencePath,
                $"no stretch of {rule.Seconds:0.##} s in which the reference stays within {rule.Spread:0.##} and the device shows values",
                "Give series that overlap, a shorter --plateau or a wider --steady");
        }

        say(run.Lag.IsKnown
            ? $"{subject}: the device comes {run.Lag.Seconds:0.0} s after the reference; {run.Pairs.Count} plateaus."
            : $"{subject}: the lag could not be told (too little changes) and is taken as 0; {run.Pairs.Count} plateaus.");
        _runs.Add((subject, run.Lag, run.Pairs.Count));
        _pairs.AddRange(run.Pairs.Select(pair => pair with { SkinTone = skinTone, Site = site }));
    }

    private TimedValues CourseOf(string path) =>
        _series.Read(path, CancellationToken.None).Of(quantity)
            ?? throw new BadInputException($"{path}, line 1", $"no column '{QuantityScale.Of(quantity).Name}' with a value in it", "Add it, or choose the other quantity with --quantity");
}
