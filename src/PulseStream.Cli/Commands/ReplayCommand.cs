using System.CommandLine;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Samples;

namespace PulseStream.Cli.Commands;

/// <summary>`replay`: runs recordings through the pipeline.</summary>
internal sealed class ReplayCommand
{
    private readonly Argument<string[]> _paths = new("PATH")
    {
        Arity = ArgumentArity.OneOrMore,
        Description = "recordings: CSV, WFDB (.hea) or EDF files, session folders, folders of them, or - for CSV on standard input",
    };

    private readonly Option<bool> _readings = new("--readings")
    {
        Description = "the files hold finished readings of an instrument, no samples: CSV with time_s and spo2, pulse, perfusion, or with frame or spot_check, the bytes of its PLX Continuous or PLX Spot-Check Measurement in hexadecimal",
    };

    private readonly RecordingOptions _recording = new();
    private readonly SessionOptions _session = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private ReplayCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var replay = new ReplayCommand(surroundings, results);
        var command = new Command("replay", "Runs recordings through the pipeline: readings accepted or refused, the advice that follows, the archive.")
        {
            replay._paths,
        };
        command.Add(replay._readings);
        replay._recording.AddTo(command);
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
            _recording.OptionsOf(parsed, session.Say),
            _recording.MapOf(parsed),
            session)
        {
            AreReadings = parsed.GetValue(_readings),
        };
        CheckTogether(order);
        return order;
    }

    private void CheckTogether(ReplayOrder order)
    {
        if (order.Csv.Start is not null && order.Paths.Count > 1)
        {
            throw new BadInputException(_recording.StartName, $"expected one recording that began then, found {order.Paths.Count}", "Replay them one by one");
        }

        if (order.Paths.Count(path => path == RecordingPaths.StandardInput) > 1)
        {
            throw new BadInputException(RecordingPaths.StandardInput, "standard input can be read once, found it named twice", "Name it once");
        }
    }
}
