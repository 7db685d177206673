using System.CommandLine;
using System.Text;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Cli.Output.Bench;
using PulseStream.Readings;
using PulseStream.Readings.Curves;
using PulseStream.Sources.Csv;
using PulseStream.Sweeps;

namespace PulseStream.Cli.Commands;

/// <summary>`sweep`: where the pipeline, or a device, stops being right.</summary>
internal sealed class SweepCommand
{
    private const double UsualLimit = 3;
    private const int ProgressSteps = 20;

    private readonly GridOptions _grid = new();
    private readonly Option<string?> _against = new("--against") { HelpName = "DIR", Description = "recorded cells instead: NAME.csv, .hea or .edf (recording, or series of a device as CSV) with NAME.truth.csv" };
    private readonly Option<string?> _out = new("--out") { HelpName = "DIR", Description = "folder for runs.parquet (a row a recording), sweep.html (heat maps) and the maps as PNG and SVG" };
    private readonly Option<string?> _limit = new("--limit") { HelpName = "POINTS", Description = "largest A_rms that is right; where it is crossed is told (3)" };
    private readonly Option<string?> _wrong = new("--wrong") { HelpName = "POINTS", Description = "an accepted reading farther off than this is wrong (3)" };
    private readonly Option<string?> _cores = new("--cores") { HelpName = "N", Description = "recordings at a time (all cores); the outcome is the same" };
    private readonly Option<string?> _curve = new("--curve") { HelpName = "FILE", Description = "calibration curve (JSON) instead of SpO2 = 110 - 25 R" };
    private readonly RecordingOptions _recording = new();
    private readonly BenchOptions _bench = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private SweepCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var sweep = new SweepCommand(surroundings, results);
        var command = new Command("sweep", "Simulates a grid of situations, runs it through the pipeline and tells where it stops being right.");
        sweep._grid.AddTo(command);
        foreach (var option in new Option[] { sweep._against, sweep._out, sweep._limit, sweep._wrong, sweep._cores, sweep._curve })
        {
            command.Add(option);
        }

        sweep._recording.AddOnlyMapTo(command);
        sweep._bench.AddTo(command);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => sweep.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        var isNdjson = _bench.IsNdjson(parsed);
        var say = _bench.Say(parsed, _surroundings.Error);
        var limit = OptionText.Number(_limit.Name, parsed.GetValue(_limit), 0, 100) ?? UsualLimit;
        var wrong = OptionText.Number(_wrong.Name, parsed.GetValue(_wrong), 0, 100) ?? UsualLimit;
        var curve = parsed.GetValue(_curve) is { } file ? CurveFile.Parse(InputFile.Read(file), file) : CalibrationCurve.TextbookLine;
        var grid = _grid.GridOf(parsed);
        var runs = parsed.GetValue(_against) is { } folder
            ? new RecordedCells(curve, wrong, new CsvOptions(Say: say), _recording.MapOf(parsed)).Read(folder, cancel)
            : Simulated(parsed, grid, new SweepRunner(grid, curve, wrong), say, cancel);
        var outcome = new SweepOutcome(CellSummary.Of(runs), CellSummary.Total(runs), limit);
        if (parsed.GetValue(_out) is { } target)
        {
            Write(target, runs, outcome, say);
        }

        if (isNdjson)
        {
            SweepResult.Print(_results, outcome);
        }
        else
        {
            using var text = new StreamWriter(_results, leaveOpen: true);
            foreach (var line in SweepResult.Lines(outcome))
            {
                text.WriteLine(line);
            }
        }

        _results.Flush();
        return ExitStatus.Done;
    }

    private static void Write(string folder, IReadOnlyList<SweepRun> runs, SweepOutcome outcome, Action<string> say)
    {
        WrittenFile.Write(Path.Combine(folder, "runs.parquet"), RunsFile.Format(runs));
        WrittenFile.Write(Path.Combine(folder, "sweep.html"), Encoding.UTF8.GetBytes(SweepPage.Of(outcome)));
        foreach (var figure in SweepFigures.Of(outcome))
        {
            using (figure)
            {
                FigureFiles.Write(folder, [figure]);
            }
        }

        say($"Written: {Path.Combine(folder, "runs.parquet")}, {Path.Combine(folder, "sweep.html")} and its maps as PNG and SVG.");
    }

    private IReadOnlyList<SweepRun> Simulated(ParseResult parsed, SweepGrid grid, SweepRunner runner, Action<string> say, CancellationToken cancel)
    {
        // Each scenario knows its limits: a value outside them is refused before any work.
        foreach (var point in grid.Points())
        {
            runner.ScenarioOf(point, grid.Seed);
        }

        var all = grid.Points().Count * grid.RunsPerCell;
        var step = Math.Max(1, all / ProgressSteps);
        var cores = (int)(OptionText.Whole(_cores.Name, parsed.GetValue(_cores), 1, 4096) ?? Environment.ProcessorCount);
        say($"{grid.Points().Count} cells of {grid.RunsPerCell} recordings, {grid.Seconds:0.##} s each.");
        var gate = new Lock();
        return runner.Run(
            cores,
            done =>
            {
                if (done % step == 0 || done == all)
                {
                    lock (gate)
                    {
                        say($"{done} of {all} recordings");
                    }
                }
            },
            cancel);
    }
}
