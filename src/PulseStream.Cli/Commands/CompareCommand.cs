using System.CommandLine;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Comparison;

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
        Exit status 1: a lost alarm, a limit passed, or a recording whose results could not be read.
        """;

    private readonly Argument<string> _a = new("A") { Description = "results of the first run" };
    private readonly Argument<string> _b = new("B") { Description = "results of the second run" };
    private readonly FormatOptions _format = new();
    private readonly ComparisonLimits _limits = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private CompareCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var compare = new CompareCommand(surroundings, results);
        var command = new Command("compare", Description) { compare._a, compare._b };
        compare._a.Validators.Add(PathArguments.RefuseUnknownOptions);
        compare._b.Validators.Add(PathArguments.RefuseUnknownOptions);
        compare._limits.AddTo(command);
        compare._format.AddTo(command);
        command.SetAction((ParseResult parsed) => compare.Run(parsed));
        return command;
    }

    private int Run(ParseResult parsed)
    {
        var (isNdjson, say) = (_format.IsNdjson(parsed), _format.Say(parsed, _surroundings.Error));
        _limits.Check(parsed);
        var options = _limits.OptionsOf(parsed);
        var comparison = RunComparison.Of(
            ResultSets.Read(parsed.GetRequiredValue(_a), say), ResultSets.Read(parsed.GetRequiredValue(_b), say), options);
        var exceeded = _limits.Exceeded(parsed, comparison);
        Print(comparison, exceeded, isNdjson);
        foreach (var row in comparison.Recordings.Where(row => row.IsUnreadable))
        {
            _surroundings.Complain($"{row.Recording}: could not be compared. {row.Problem}");
        }

        return exceeded.Count > 0 || comparison.Unreadable > 0 ? ExitStatus.NotAll : ExitStatus.Done;
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
