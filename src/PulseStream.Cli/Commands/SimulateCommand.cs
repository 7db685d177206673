using System.CommandLine;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Samples;
using PulseStream.Simulation;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Cli.Commands;

/// <summary>`simulate`: writes a recording whose truth is known, and the truth beside it, or plays one as an instrument.</summary>
internal sealed class SimulateCommand
{
    private const int SamplesPerBlock = 25;

    private readonly Argument<string?> _path = new("OUT")
    {
        Arity = ArgumentArity.ZeroOrOne,
        Description = "recording to write (CSV); its .truth.csv and .beats.csv are written beside it; left out with --to alone",
    };

    private readonly Option<bool> _quiet = new("--quiet") { Description = "no diagnostics on standard error, failures excepted" };
    private readonly ScenarioOptions _scenario = new();
    private readonly PlayOptions _play = new();
    private readonly Surroundings _surroundings;

    private SimulateCommand(Surroundings surroundings) => _surroundings = surroundings;

    public static Command Of(Surroundings surroundings)
    {
        var simulate = new SimulateCommand(surroundings);
        var command = new Command("simulate", "Writes a recording of an invented finger whose truth is known, and the truth beside it; or plays it on a port.") { simulate._path };
        simulate._path.Validators.Add(PathArguments.RefuseUnknownOptions);
        simulate._scenario.AddTo(command);
        simulate._play.AddTo(command);
        command.Add(simulate._quiet);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => simulate.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        Action<string> say = parsed.GetValue(_quiet) ? static _ => { } : _surroundings.Error.WriteLine;
        var (path, port) = (parsed.GetValue(_path), _play.Port(parsed));
        if (path is null && port is null)
        {
            throw new BadInputException("OUT", "expected a recording to write, or --to with a port, found neither", "Name one and run again");
        }

        var layout = port is null ? null : _play.Layout(parsed);
        var recording = new SimulatedRecording(_scenario.ScenarioOf(parsed, layout?.Rate.Hz));
        if (path is not null)
        {
            say($"Written, invented: {string.Join(", ", SimulatedFiles.Write(path, recording, cancel))}.");
        }

        return port is null || layout is null ? ExitStatus.Done : Play(parsed, port, layout, recording, say, cancel);
    }

    private int Play(ParseResult parsed, string port, WireLayout layout, SimulatedRecording simulated, Action<string> say, CancellationToken cancel)
    {
        using var played = _play.Played(parsed) is { } file ? CsvRecording.Open(file, new CsvOptions(null, null, null, say), cancel) : null;
        _play.Check(played?.Header ?? simulated.Header, layout);
        using var player = new InstrumentPlayer(port, layout, _play.Speed(parsed), _surroundings.Clock, cancel);
        if (played is null)
        {
            foreach (var block in simulated.Blocks(SamplesPerBlock).TakeWhile(_ => !cancel.IsCancellationRequested))
            {
                player.Play(block);
            }
        }
        else
        {
            using var blocks = played.Blocks(cancel).Subscribe(player.Play);
        }

        player.Flush();
        say($"Played on {port}: {player.Samples} samples.");
        return cancel.IsCancellationRequested ? ExitStatus.Cancelled : ExitStatus.Done;
    }
}
