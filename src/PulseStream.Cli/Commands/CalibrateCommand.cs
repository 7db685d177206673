using System.CommandLine;
using System.Globalization;
using System.Text;
using PulseStream.Accuracy.Calibration;
using PulseStream.Accuracy.Optics;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Cli.Output.Bench;
using PulseStream.Plots.Bench;
using PulseStream.Readings.Curves;
using PulseStream.Samples;

namespace PulseStream.Cli.Commands;

/// <summary>`calibrate`: fits the curve from ratio of ratios to SpO2, or exports that of theory.</summary>
internal sealed class CalibrateCommand
{
    private readonly Argument<string?> _pairs = new("PAIRS")
    {
        Arity = ArgumentArity.ZeroOrOne,
        Description = "pairs (CSV): subject, reference, ratio; - for standard input; left out with --theory to export that curve",
    };

    private readonly Option<string?> _out = new("--out") { HelpName = "FILE", Description = "curve to write (JSON), for --curve of every command" };
    private readonly Option<string?> _name = new("--name") { HelpName = "WORD", Description = "name of the curve; the file's name unless told" };
    private readonly Option<string?> _theory = new("--theory") { HelpName = "RED,INFRARED", Description = "wavelengths in nm (660,940): the curve of Beer and Lambert's law beside the fitted one" };
    private readonly Option<string?> _figures = BenchOptions.NewFigures();
    private readonly BenchOptions _bench = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private CalibrateCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var calibrate = new CalibrateCommand(surroundings, results);
        var command = new Command("calibrate", "Fits the curve from ratio of ratios to SpO2, and tells what it promises for people not among the pairs.")
        {
            calibrate._pairs, calibrate._out, calibrate._name, calibrate._theory, calibrate._figures,
        };
        calibrate._pairs.Validators.Add(PathArguments.RefuseUnknownOptions);
        calibrate._bench.AddTo(command);
        command.SetAction((ParseResult parsed) => calibrate.Run(parsed));
        return command;
    }

    private int Run(ParseResult parsed)
    {
        var isNdjson = _bench.IsNdjson(parsed);
        var say = _bench.Say(parsed, _surroundings.Error);
        var theory = TheoryOf(parsed);
        var path = parsed.GetValue(_pairs);
        if (path is null)
        {
            return Export(parsed, theory ?? throw new BadInputException("PAIRS", "expected a table of pairs, or --theory with two wavelengths, found neither", "Name one and run again"));
        }

        var fit = CurveFit.Of(RatioTable.Read(TableFile.Read(path, _surroundings.Input), path, say), path);
        var curve = fit.ToCurve(
            parsed.GetValue(_name) ?? (path == RecordingPaths.StandardInput ? "fitted" : Path.GetFileNameWithoutExtension(path)),
            string.Create(CultureInfo.InvariantCulture, $"fitted to {fit.Pairs.Count} pairs of {fit.Subjects} subjects, {fit.Outliers} left aside; A_rms on subjects left out"));
        if (parsed.GetValue(_out) is { } file)
        {
            WrittenFile.Write(file, Encoding.UTF8.GetBytes(CurveFile.Format(curve) + "\n"));
            say($"Written: {file}.");
        }

        if (parsed.GetValue(_figures) is { } folder)
        {
            Draw(folder, CalibrationFigures.Of(fit, theory));
        }

        if (isNdjson)
        {
            CalibrationResult.Print(_results, fit, curve.Name, theory);
        }
        else
        {
            using var text = new StreamWriter(_results, leaveOpen: true);
            foreach (var line in CalibrationResult.Lines(fit, curve.Name, theory))
            {
                text.WriteLine(line);
            }
        }

        _results.Flush();
        return ExitStatus.Done;
    }

    private static void Draw(string folder, IReadOnlyList<Figure> figures)
    {
        FigureFiles.Write(folder, figures);
        foreach (var figure in figures)
        {
            figure.Dispose();
        }
    }

    private int Export(ParseResult parsed, TheoreticalCurve theory)
    {
        var curve = CurveFile.Format(theory.ToCurve());
        if (parsed.GetValue(_out) is { } file)
        {
            WrittenFile.Write(file, Encoding.UTF8.GetBytes(curve + "\n"));
        }
        else
        {
            using var text = new StreamWriter(_results, leaveOpen: true);
            text.WriteLine(curve);
        }

        _results.Flush();
        return ExitStatus.Done;
    }

    private TheoreticalCurve? TheoryOf(ParseResult parsed)
    {
        if (parsed.GetValue(_theory) is not { } text)
        {
            return null;
        }

        double?[] wavelengths = [.. text.Split(',').Select(word => double.TryParse(word, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) ? number : (double?)null)];
        return wavelengths is [{ } red, { } infrared]
            ? TheoreticalCurve.Of(red, infrared)
            : throw new BadInputException(_theory.Name, $"expected two wavelengths in nm such as 660,940, found '{text}'", "Correct the option and run again");
    }
}
