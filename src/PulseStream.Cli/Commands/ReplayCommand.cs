using System.CommandLine;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Samples;
using PulseStream.Sources.Csv;

namespace PulseStream.Cli.Commands;

/// <summary>`replay`: runs recordings through the pipeline.</summary>
internal sealed class ReplayCommand
{
    // Above any converter's largest count, so that only slips are refused.
    private const double LargestFullScale = 1e12;

    private readonly Argument<string[]> _paths = new("PATH")
    {
        Arity = ArgumentArity.OneOrMore,
        Description = "recordings: CSV files, session folders, folders of them, or - for CSV on standard input",
    };

    private readonly Option<string?> _rate = new("--rate") { HelpName = "HZ", Description = "sample rate where a file does not tell it, 25 to 1000" };
    private readonly Option<string?> _fullScale = new("--full-scale") { HelpName = "N", Description = "the converter's largest count, to judge clipping" };
    private readonly Option<string?> _start = new("--start") { HelpName = "TIME", Description = "when the recording began, ISO 8601 with offset" };
    private readonly SessionOptions _session = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private ReplayCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var replay = new ReplayCommand(surroundings, results);
        var command = new Command("replay", "Runs recordings through the pipeline: readings accepted or refused, the advice that follows, the archive.")
        {
            replay._paths, replay._rate, replay._fullScale, replay._start,
        };
        replay._session.AddTo(command);
        replay._paths.Validators.Add(PathArguments.RefuseUnknownOptions);

        // On a thread of its own: the replay blocks, and Ctrl-C must be heard meanwhile.
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => replay.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        var order = OrderOf(parsed);
        return _session.Print(parsed, _results, printer =>
            new ReplayRun(order, _surroundings, _results, printer, _session.IsForPeople(parsed) ? _surroundings.Screen : null).Run(cancel));
    }

    private ReplayOrder OrderOf(ParseResult parsed)
    {
        var paths = parsed.GetRequiredValue(_paths);
        var session = _session.OrderOf(parsed, _surroundings.Error);
        var order = new ReplayOrder(
            paths,
            new CsvOptions(
                OptionText.Number(_rate.Name, parsed.GetValue(_rate), SampleRate.LowestHz, SampleRate.HighestHz),
                OptionText.Number(_fullScale.Name, parsed.GetValue(_fullScale), 1, LargestFullScale),
                OptionText.Instant(_start.Name, parsed.GetValue(_start)),
                session.Say),
            session);
        CheckTogether(order);
        return order;
    }

    private void CheckTogether(ReplayOrder order)
    {
        if (order.Csv.Start is not null && order.Paths.Count > 1)
        {
            throw new BadInputException(_start.Name, $"expected one recording that began then, found {order.Paths.Count}", "Replay them one by one");
        }

        if (order.Paths.Count(path => path == RecordingPaths.StandardInput) > 1)
        {
            throw new BadInputException(RecordingPaths.StandardInput, "standard input can be read once, found it named twice", "Name it once");
        }
    }
}
