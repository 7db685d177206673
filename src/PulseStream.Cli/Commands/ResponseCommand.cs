using System.CommandLine;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Responses;
using PulseStream.Accuracy.Runs;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output.Bench;
using PulseStream.Plots.Bench;
using PulseStream.Readings;
using PulseStream.Readings.Curves;

namespace PulseStream.Cli.Commands;

/// <summary>`response`: how an instrument follows steps of saturation and pulse rate.</summary>
internal sealed class ResponseCommand
{
    private const double LatestSeconds = 1e9;

    private readonly Argument<string> _series = new("SERIES") { Description = "series (CSV): time_s, spo2 and/or pulse; or a recording (CSV, WFDB, EDF, a session folder), which the pipeline reads; - for standard input" };
    private readonly Option<string?> _reference = new("--reference") { HelpName = "SERIES", Description = "what a quicker instrument showed, or the truth beside a simulated recording" };
    private readonly Option<string[]> _stepAt = new("--step-at") { HelpName = "SECONDS", Description = "when the truth jumped, repeatable", AllowMultipleArgumentsPerToken = false };
    private readonly Option<string?> _curve = new("--curve") { HelpName = "FILE", Description = "calibration curve (JSON) for a recording" };
    private readonly Option<string?> _figures = BenchOptions.NewFigures();
    private readonly RecordingOptions _recording = new();
    private readonly BenchOptions _bench = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private ResponseCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var response = new ResponseCommand(surroundings, results);
        var command = new Command("response", "Tells how an instrument follows steps: delay, 10 to 90 % time, overshoot, averaging time.")
        {
            response._series, response._reference, response._stepAt, response._curve, response._figures,
        };
        response._series.Validators.Add(PathArguments.RefuseUnknownOptions);
        response._recording.AddWithoutStartTo(command);
        response._bench.AddTo(command);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => response.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        var isNdjson = _bench.IsNdjson(parsed);
        var say = _bench.Say(parsed, _surroundings.Error);
        var curve = parsed.GetValue(_curve) is { } file ? CurveFile.Parse(InputFile.Read(file), file) : CalibrationCurve.TextbookLine;
        double[] told = [.. (parsed.GetValue(_stepAt) ?? []).Select(text => OptionText.Number(_stepAt.Name, text, 0, LatestSeconds)!.Value)];
        var path = parsed.GetRequiredValue(_series);
        var files = new SeriesFile(_surroundings.Input, curve, _recording.OptionsOf(parsed, say), _recording.MapOf(parsed));
        var series = files.Read(path, cancel);
        var reference = parsed.GetValue(_reference) is { } referencePath ? files.Read(referencePath, cancel) : null;
        StepResponse[] found = [.. Of(series, reference, told, Quantity.Saturation), .. Of(series, reference, told, Quantity.PulseRate)];
        if (found.Length == 0)
        {
            say($"{path}: no step found: two levels that last 10 s, 3 points or 8 /min apart.");
        }

        found = [.. found.OrderBy(step => step.At)];
        if (parsed.GetValue(_figures) is { } folder)
        {
            Draw(folder, found, series, reference);
        }

        ResponseResult.Print(_results, found, isNdjson);
        _results.Flush();
        return ExitStatus.Done;
    }

    private static void Draw(string folder, StepResponse[] found, Series series, Series? reference)
    {
        foreach (var (i, step) in found.Index())
        {
            using var figure = ResponseFigure.Of(step, series.Of(step.Quantity)!, reference?.Of(step.Quantity), i + 1);
            FigureFiles.Write(folder, [figure]);
        }
    }

    private static IReadOnlyList<StepResponse> Of(Series series, Series? reference, double[] told, Quantity quantity) =>
        series.Of(quantity) is { } course ? StepResponses.Of(course, quantity, reference?.Of(quantity), told) : [];
}
