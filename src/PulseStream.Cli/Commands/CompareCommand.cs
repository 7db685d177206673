using System.Collections.Concurrent;
using System.CommandLine;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Cli.Output.Bench;
using PulseStream.Comparison;
using PulseStream.Plots.Bench;
using PulseStream.Readings.Curves;
using PulseStream.Samples;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Commands;

/// <summary>`compare`: two runs over the same recordings, and what changed.</summary>
internal sealed class CompareCommand
{
    private const string Description =
        """
        Compares two runs over the same recordings and tells what changed, worst first.
        A and B are archives, folders of sessions, or files that 'replay --format ndjson' printed.
        Recordings are matched by the file or session name of their source.
          lost    advice that asked for action in A is missing in B or less urgent, in any sitting
          gained  the same from B to A
          moved   no advice changed in urgency, but readings did: one appeared or vanished, or one
                  that both accepted within 5 s has another whole percent; or one run lacks the recording
          same    nothing of this
        usedA and usedB are the shares of usable seconds, 0 to 1.
        A replay with --baseline that was interrupted goes on where it stopped when the same command is
        given again; meanwhile what is finished lies in the archive, in a file .unfinished-replay-*.
        Exit status 1: a lost alarm, a limit passed, or a recording whose results could not be read.
        """;

    private readonly Argument<string?> _a = new("A") { Arity = ArgumentArity.ZeroOrOne, Description = "results of the first run; with --baseline the recordings to replay, DIR's own where left out" };
    private readonly Argument<string?> _b = new("B") { Arity = ArgumentArity.ZeroOrOne, Description = "results of the second run; none with --baseline" };
    private readonly Option<string?> _baseline = new("--baseline") { HelpName = "DIR", Description = "A is this archive, B a replay by this program on all processors" };
    private readonly Option<string?> _curve = new("--curve") { HelpName = "FILE", Description = "with --baseline: calibration curve (JSON) instead of each session's own" };
    private readonly Option<string?> _policy = new("--policy") { HelpName = "FILE", Description = "with --baseline: triage policy (JSON) instead of each session's own" };
    private readonly Option<string?> _page = new("--page") { HelpName = "FILE", Description = "write a page as well (HTML, needs nothing else): lost alarms first, then overall and each recording" };
    private readonly Option<string?> _figures = BenchOptions.NewFigures();
    private readonly FormatOptions _format = new();
    private readonly ComparisonLimits _limits = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private CompareCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var compare = new CompareCommand(surroundings, results);
        var command = new Command("compare", Description) { compare._a, compare._b, compare._baseline, compare._curve, compare._policy, compare._page, compare._figures };
        compare._a.Validators.Add(PathArguments.RefuseUnknownOptions);
        compare._b.Validators.Add(PathArguments.RefuseUnknownOptions);
        compare._limits.AddTo(command);
        compare._format.AddTo(command);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => compare.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        var (isNdjson, say) = (_format.IsNdjson(parsed), _format.Say(parsed, _surroundings.Error));
        _limits.Check(parsed);
        var options = _limits.OptionsOf(parsed);
        var comparison = Compared(parsed, options, say, cancel);
        var exceeded = _limits.Exceeded(parsed, comparison);
        if (parsed.GetValue(_page) is { } page)
        {
            PageFile.Write(page, ComparisonPage.HtmlOf(comparison, exceeded));
        }

        if (parsed.GetValue(_figures) is { } folder)
        {
            WriteFigure(comparison, folder, say);
        }

        Print(comparison, exceeded, isNdjson);
        foreach (var row in comparison.Recordings.Where(row => row.IsUnreadable))
        {
            _surroundings.Complain($"{row.Recording}: could not be compared. {row.Problem}");
        }

        return exceeded.Count > 0 || comparison.Unreadable > 0 ? ExitStatus.NotAll : ExitStatus.Done;
    }

    private RunComparison Compared(ParseResult parsed, ComparisonOptions options, Action<string> say, CancellationToken cancel)
    {
        var (first, second) = (parsed.GetValue(_a), parsed.GetValue(_b));
        if (parsed.GetValue(_baseline) is not { } baseline)
        {
            return first is not null && second is not null
                ? Compared(ResultSets.Of(first, say), ResultSets.Of(second, say), options, cancel)
                : throw new BadInputException("compare", "expected two runs, A and B, or --baseline with an archive", "Name them and run again");
        }

        if (second is not null)
        {
            throw new BadInputException(second, "with --baseline one path says what to replay, found two", "Leave one out");
        }

        var order = new SessionOrder(
            baseline,
            Person: null,
            Sensor: null,
            Site: null,
            parsed.GetValue(_curve) is { } curve ? CurveFile.Parse(InputFile.Read(curve), curve) : null,
            parsed.GetValue(_policy) is { } policy ? TriagePolicy.Parse(InputFile.Read(policy), policy) : null,
            used => new Circumstances { DeviceArmsPercent = used.ArmsPercent },
            [],
            say);
        var a = ResultSets.Of(baseline, say);
        return new BaselineRun(order, _surroundings, cancel).Run(RecordingPaths.Expand(first ?? baseline, say), b => Compared(a, b, options, cancel));
    }

    // In parallel for the replay as for the disk: both runs of a recording are read, compared and forgotten, and only its row is kept.
    // One at a time for each processor, for nights and spot checks take unlike long.
    private static RunComparison Compared(IReadOnlyList<ListedRecording> a, IReadOnlyList<ListedRecording> b, ComparisonOptions options, CancellationToken cancel) =>
        RunComparison.Of(Partitioner.Create(Pairing.Of(a, b), EnumerablePartitionerOptions.NoBuffering).AsParallel().AsOrdered().WithDegreeOfParallelism(Environment.ProcessorCount).WithCancellation(cancel)
            .Select(pair => RecordingComparison.Of(pair.A?.Read(), pair.B?.Read(), options)));

    private static void WriteFigure(RunComparison comparison, string folder, Action<string> say)
    {
        if (comparison.Both.Count == 0)
        {
            say("No reading is in both runs: there is no figure.");
            return;
        }

        using var figure = ComparisonFigure.Of(comparison.Both);
        FigureFiles.Write(folder, [figure]);
    }

    private void Print(RunComparison comparison, IReadOnlyList<string> exceeded, bool isNdjson)
    {
        if (isNdjson)
        {
            using var line = new NdjsonLine(_results);
            ComparisonLines.Print(line, comparison, exceeded);
        }
        else
        {
            using var text = new StreamWriter(_results, leaveOpen: true);
            ComparisonText.Print(text, comparison, exceeded);
        }

        _results.Flush();
    }
}
