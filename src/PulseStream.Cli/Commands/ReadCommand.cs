using System.CommandLine;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Sources.Live;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Cli.Commands;

/// <summary>`read`: runs a live instrument through the pipeline.</summary>
internal sealed class ReadCommand
{
    private const double LongestGiveUpSeconds = 7 * 24 * 3600;

    private readonly Argument<string> _port = new("PORT") { Description = "serial port or pseudo-terminal; `pulsestream ports` lists the ports" };
    private readonly Option<string> _layout = new("--layout") { HelpName = "FILE", Required = true, Description = "what the instrument says (JSON); recordings/instruments has examples" };
    private readonly Option<string?> _giveUpAfter = new("--give-up-after") { HelpName = "SECONDS", Description = "end, with exit status 3, once nothing has come for so long after the first byte; never unless told" };
    private readonly SessionOptions _session = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private ReadCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var read = new ReadCommand(surroundings, results);
        var command = new Command("read", "Reads an instrument on a serial port, live: readings accepted or refused, the advice that follows, the archive.")
        {
            read._port, read._layout, read._giveUpAfter,
        };
        read._session.AddTo(command);
        read._port.Validators.Add(PathArguments.RefuseUnknownOptions);

        // On a thread of its own: reading blocks, and Ctrl-C must be heard meanwhile.
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => read.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        var order = _session.OrderOf(parsed, _surroundings.Error);
        var layoutPath = parsed.GetRequiredValue(_layout);
        var layout = WireLayoutFile.Parse(InputFile.Read(layoutPath), layoutPath);
        var options = new LiveOptions(OptionText.Number(_giveUpAfter.Name, parsed.GetValue(_giveUpAfter), 0, LongestGiveUpSeconds), order.Say);
        return _session.Print(parsed, _results, printer =>
        {
            SessionBeginning.PrepareArchive(order);
            var session = new SessionRun(order, _surroundings, _results, printer, _session.IsForPeople(parsed) ? _surroundings.Screen : null);
            return Run(parsed.GetRequiredValue(_port), layout, options, session, order.Say, cancel);
        });
    }

    private int Run(string port, WireLayout layout, LiveOptions options, SessionRun session, Action<string> say, CancellationToken cancel)
    {
        using var live = LiveRecording.Open(port, layout, options, _surroundings.Clock);
        using var link = live.Link.Subscribe(change => session.Say(LinkWords.Of(port, change), isTrouble: change.State != LinkState.Receiving));
        using var opened = new OpenedRecording(live, Session: null, IsLive: true);
        session.Announce(opened);
        session.Run(opened, isKept: live.WaitForInstrument(cancel), cancel);
        if (live.FaultWords is { Length: > 0 } words)
        {
            say($"{port}: frames refused: {words}.");
        }

        if (live.IsGivenUp)
        {
            _surroundings.Complain($"{port}: the device was lost and did not come back; what was received is kept. Check the cable and run again.");
            return ExitStatus.DeviceLost;
        }

        if (session.IsArchiveLost)
        {
            return ExitStatus.BadInput;
        }

        return cancel.IsCancellationRequested ? ExitStatus.Cancelled : ExitStatus.Done;
    }
}
