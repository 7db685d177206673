using System.CommandLine;
using System.Text;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Runs;
using PulseStream.Accuracy.Tables;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Cli.Output.Bench;
using PulseStream.Plots.Bench;
using PulseStream.Samples;

namespace PulseStream.Cli.Commands;

/// <summary>`validate`: accuracy statistics against reference values.</summary>
internal sealed class ValidateCommand
{
    private readonly Argument<string?> _pairs = new("PAIRS")
    {
        Arity = ArgumentArity.ZeroOrOne,
        Description = "pairs (CSV): subject, reference, reading; optionally skin_tone, site, device; - for standard input",
    };

    private readonly Option<string[]> _device = new("--device") { HelpName = "SERIES", Description = "instead of pairs: what the device showed (CSV): time_s, spo2 and/or pulse; repeatable, one a subject", AllowMultipleArgumentsPerToken = false };
    private readonly Option<string[]> _reference = new("--reference") { HelpName = "SERIES", Description = "with --device: what the reference showed, in the same order", AllowMultipleArgumentsPerToken = false };
    private readonly Option<string?> _runs = new("--runs") { HelpName = "FILE", Description = "instead of pairs: a table (CSV) of runs: subject, device, reference; optionally skin_tone, site" };
    private readonly Option<string?> _plateau = new("--plateau") { HelpName = "SECONDS", Description = "with series: how long the reference has to be steady (30)" };
    private readonly Option<string?> _steady = new("--steady") { HelpName = "N", Description = "with series: spread of a steady reference, largest less smallest (2 points, or 6 /min)" };
    private readonly Option<string?> _quantity = BenchOptions.NewQuantity();
    private readonly Option<string?> _criteria = BenchOptions.NewCriteria();
    private readonly Option<string?> _page = BenchOptions.NewPage();
    private readonly Option<string?> _figures = BenchOptions.NewFigures();
    private readonly BenchOptions _bench = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private ValidateCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var validate = new ValidateCommand(surroundings, results);
        var command = new Command("validate", "States the accuracy of a device against reference values: bias, precision, A_rms, limits of agreement, criteria.")
        {
            validate._pairs, validate._device, validate._reference, validate._runs, validate._plateau, validate._steady,
            validate._quantity, validate._criteria, validate._page, validate._figures,
        };
        validate._pairs.Validators.Add(PathArguments.RefuseUnknownOptions);
        validate._bench.AddTo(command);
        command.SetAction((ParseResult parsed) => validate.Run(parsed));
        return command;
    }

    private int Run(ParseResult parsed)
    {
        var isNdjson = _bench.IsNdjson(parsed);
        var say = _bench.Say(parsed, _surroundings.Error);
        var quantity = BenchOptions.QuantityOf(parsed, _quantity);
        var criteria = BenchOptions.CriteriaOf(parsed, _criteria);
        var runs = RunsOf(parsed, quantity, say);
        var pairs = runs?.Pairs ?? PairsOf(parsed, quantity, say);
        var statement = AccuracyStatement.Of(pairs, quantity, criteria);
        foreach (var warning in statement.Warnings)
        {
            say($"Warning: {warning}");
        }

        Draw(parsed, statement, say);
        if (isNdjson)
        {
            AccuracyJson.Print(_results, statement, line => AddRuns(line, runs));
        }
        else
        {
            Print(AccuracyText.Lines(statement, TitleOf(parsed, statement)).Concat(RunLines(runs)));
        }

        _results.Flush();
        return statement.IsMet ? ExitStatus.Done : ExitStatus.NotMet;
    }

    private void Draw(ParseResult parsed, AccuracyStatement statement, Action<string> say)
    {
        var (page, folder) = (parsed.GetValue(_page), parsed.GetValue(_figures));
        if (page is null && folder is null)
        {
            return;
        }

        var figures = AccuracyFigures.Of(statement);
        if (folder is not null)
        {
            FigureFiles.Write(folder, figures);
        }

        if (page is not null)
        {
            WrittenFile.Write(page, Encoding.UTF8.GetBytes(AccuracyPage.Of(statement, TitleOf(parsed, statement), figures)));
            say($"Written: {page}.");
        }

        foreach (var figure in figures)
        {
            figure.Dispose();
        }
    }

    private IReadOnlyList<PairedReading> PairsOf(ParseResult parsed, Quantity quantity, Action<string> say)
    {
        var path = parsed.GetValue(_pairs)
            ?? throw new BadInputException("PAIRS", "expected a table of pairs, or --device with --reference, found neither", "Name one and run again");
        return PairTable.Read(TableFile.Read(path, _surroundings.Input), path, quantity, say);
    }

    private RunFiles? RunsOf(ParseResult parsed, Quantity quantity, Action<string> say)
    {
        string[] devices = parsed.GetValue(_device) ?? [];
        string[] references = parsed.GetValue(_reference) ?? [];
        if (devices.Length != references.Length)
        {
            throw new BadInputException(_reference.Name, $"expected one reference for each --device, found {references.Length} for {devices.Length}", "Give them in the same order and run again");
        }

        if (parsed.GetValue(_runs) is null && devices.Length == 0)
        {
            return null;
        }

        if (parsed.GetValue(_pairs) is not null)
        {
            throw new BadInputException("PAIRS", "expected a table of pairs or series, found both", "Keep one of them and run again");
        }

        var usual = PlateauRule.Usual(quantity);
        var runs = new RunFiles(
            new(OptionText.Number(_plateau.Name, parsed.GetValue(_plateau), 5, 3600) ?? usual.Seconds, OptionText.Number(_steady.Name, parsed.GetValue(_steady), 0, 100) ?? usual.Spread),
            quantity,
            _surroundings.Input,
            say);
        if (parsed.GetValue(_runs) is { } list)
        {
            runs.ReadList(list);
        }

        foreach (var (device, reference) in devices.Zip(references))
        {
            runs.Read(Path.GetFileNameWithoutExtension(device), device, reference);
        }

        return runs;
    }

    private string TitleOf(ParseResult parsed, AccuracyStatement statement)
    {
        var source = parsed.GetValue(_pairs) ?? parsed.GetValue(_runs);
        var name = statement.Quantity == Quantity.Saturation ? "SpO2" : "Pulse rate";
        return $"{name}: {statement.All.Count} pairs of {statement.All.Subjects} {(statement.All.Subjects == 1 ? "subject" : "subjects")}{(source is null ? "" : $", {Path.GetFileName(source)}")}";
    }

    private static void AddRuns(JsonLine line, RunFiles? runs)
    {
        if (runs is not null)
        {
            line.List("runs", runs.Runs, (inner, run) => inner.Text("subject", run.Subject).Number("lagSeconds", run.Lag.IsKnown ? run.Lag.Seconds : null).Whole("n", run.Pairs));
        }
    }

    private static IEnumerable<string> RunLines(RunFiles? runs) => runs is null
        ? []
        : runs.Runs.Select(run => $"  {run.Subject}: lag {(run.Lag.IsKnown ? $"{run.Lag.Seconds:0.0} s" : "not known, taken as 0")}, {run.Pairs} plateaus").Prepend("Runs, each with the lag of the device behind the reference:").Prepend("");

    private void Print(IEnumerable<string> lines)
    {
        using var text = new StreamWriter(_results, leaveOpen: true);
        foreach (var line in lines)
        {
            text.WriteLine(line);
        }
    }
}
