using System.CommandLine;
using System.Net;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Page;
using PulseStream.Page.Live;
using PulseStream.Page.Web;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Live;
using PulseStream.Sources.Signals;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Cli.Commands;

/// <summary>`serve`: the bedside page.</summary>
internal sealed class ServeCommand
{
    private const int DefaultPort = 8421;
    private const double FastestSpeed = 100;

    private readonly Argument<string> _path = new("SOURCE") { Description = "a serial port with --layout, or what is played: a CSV file or a session folder" };
    private readonly Option<string?> _layout = new("--layout") { HelpName = "FILE", Description = "what the instrument on the port says (JSON); recordings/instruments has examples" };
    private readonly Option<string?> _address = new("--address") { HelpName = "IP", Description = "where to listen; 127.0.0.1 unless told. Any other than loopback asks for a token, printed once" };
    private readonly Option<string?> _port = new("--port") { HelpName = "N", Description = $"port to listen at, 0 for a free one; {DefaultPort} unless told" };
    private readonly Option<string?> _speed = new("--speed") { HelpName = "N", Description = "how many times as fast as recorded it is played; 1 unless told" };
    private readonly Option<string?> _rate = new("--rate") { HelpName = "HZ", Description = "sample rate where the file does not tell it, 25 to 1000" };
    private readonly Option<string?> _start = new("--start") { HelpName = "TIME", Description = "when the recording began, ISO 8601 with offset" };
    private readonly CommonOptions _common = new();
    private readonly PersonOptions _person = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private ServeCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var serve = new ServeCommand(surroundings, results);
        var command = new Command("serve", "Shows a measurement as a page in the browser: wave, readings that can be believed, advice. No medical device.")
        {
            serve._path, serve._layout, serve._address, serve._port, serve._speed, serve._rate, serve._start,
        };
        serve._common.AddTo(command);
        serve._person.AddTo(command);
        serve._path.Validators.Add(PathArguments.RefuseUnknownOptions);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => serve.RunAsync(parsed, cancel));
        return command;
    }

    private async Task<int> RunAsync(ParseResult parsed, CancellationToken cancel)
    {
        var order = OrderOf(parsed);
        var layout = parsed.GetValue(_layout) is { } file ? WireLayoutFile.Parse(InputFile.Read(file), file) : null;
        var address = AddressOf(parsed);
        var speed = OptionText.Number(_speed.Name, parsed.GetValue(_speed), 0.1, FastestSpeed) ?? 1;
        SessionBeginning.PrepareArchive(order.Session);
        using var opened = layout is null ? Open(order, speed, cancel) : Open(order, layout);
        var feeling = SessionBeginning.JudgementOf(order.Session, opened).Circumstances.Feeling;
        var person = order.Session.IdentityOf("any", opened.Session?.Identity).Person;
        var options = new BedsideOptions(person, order.Session.Archive, speed);
        using var session = new BedsideSession(opened.Recording, feeling, options, _surroundings.Clock);
        var token = address.IsLoopback ? null : PageToken.Create();
        await using var server = await BedsideServer.StartAsync(session, options, address, token, $"{_address.Name}, {_port.Name}");
        Say(server.Url, token, order.Session.Say);
        using var link = (opened.Recording as LiveRecording)?.Link.Subscribe(change =>
        {
            session.LinkIs(PageLinkOf(change.State));
            order.Session.Say(LinkWords.Of(order.Paths[0], change));
        });

        // On a thread of its own: the player waits, and Ctrl-C must be heard meanwhile.
        await Task.Factory.StartNew(() => Measure(order, opened, session, cancel), CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

        // The last reading and its advice stay to be read until somebody ends the program.
        await Task.Delay(Timeout.Infinite, cancel).ContinueWith(_ => { }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);
        session.End();
        return session.ArchiveProblem is null ? ExitStatus.Cancelled : ExitStatus.BadInput;
    }

    // An instrument that never speaks leaves no session behind, and one that speaks late began when it did.
    private void Measure(ReplayOrder order, OpenedRecording opened, BedsideSession session, CancellationToken cancel)
    {
        var live = opened.Recording as LiveRecording;
        var isKept = live is null || live.WaitForInstrument(cancel);
        var judgement = SessionBeginning.JudgementOf(order.Session, opened);
        using (var archive = isKept && order.Session.Archive is { } folder ? SessionBeginning.Archive(folder, order.Session, opened, judgement) : null)
        {
            session.Run(judgement, archive, cancel);
        }

        if (session.ArchiveProblem is { } problem)
        {
            _surroundings.Complain($"{problem} The page went on; what was secured until then stays, nothing after it was kept.");
        }

        if (live?.FaultWords is { Length: > 0 } words)
        {
            order.Session.Say($"{order.Paths[0]}: frames refused: {words}.");
        }
    }

    // A recording is played at its pace; an instrument keeps its own.
    private OpenedRecording Open(ReplayOrder order, double speed, CancellationToken cancel)
    {
        var paths = RecordingPaths.Expand(order.Paths[0], order.Session.Say);
        var opened = paths.Count == 1
            ? RecordingPaths.Open(paths[0], _surroundings.Input, order.Csv, order.Map, cancel)
            : throw new BadInputException(order.Paths[0], $"expected one recording, found {paths.Count}", "Name one of them");
        return opened with { Recording = new PacedRecording(opened.Recording, speed, _surroundings.Clock), IsLive = true };
    }

    private OpenedRecording Open(ReplayOrder order, WireLayout layout) => new(
        LiveRecording.Open(order.Paths[0], layout, new LiveOptions(GiveUpAfterSeconds: null, order.Session.Say), _surroundings.Clock),
        Session: null,
        IsLive: true);

    private static PageLink PageLinkOf(LinkState state) => state switch
    {
        LinkState.Waiting => PageLink.Waiting,
        LinkState.Receiving => PageLink.Receiving,
        LinkState.Silent => PageLink.Silent,
        _ => PageLink.Lost,
    };

    private void Say(Uri url, PageToken? token, Action<string> say)
    {
        using var text = new StreamWriter(_results, leaveOpen: true);
        text.WriteLine(token is null ? $"Page: {url}" : $"Page: {new Uri(url, $"?token={token.Text}")}");
        if (token is not null)
        {
            text.WriteLine("Whoever knows the token sees the page, and the line to it can be overheard: put a server with TLS in front of it.");
        }

        text.Flush();
        _results.Flush();
        say("Ctrl-C ends it; what was received is kept.");
    }

    private PageAddress AddressOf(ParseResult parsed)
    {
        var port = OptionText.Whole(_port.Name, parsed.GetValue(_port), IPEndPoint.MinPort, IPEndPoint.MaxPort) ?? DefaultPort;
        var text = parsed.GetValue(_address) ?? IPAddress.Loopback.ToString();
        return IPAddress.TryParse(text, out var address)
            ? new PageAddress(address, (int)port)
            : throw new BadInputException(_address.Name, $"expected an address such as 127.0.0.1 or ::1, found '{text}'", "Give a number, not a name");
    }

    private ReplayOrder OrderOf(ParseResult parsed)
    {
        var session = new SessionOrder(
            _common.Archive(parsed),
            _common.Person(parsed),
            Sensor: null,
            Site: null,
            _common.Curve(parsed),
            _common.Policy(parsed),
            curve => _person.Circumstances(parsed, curve),
            _person.Previous(parsed),
            _common.Say(parsed, _surroundings.Error));
        return new ReplayOrder(
            [parsed.GetRequiredValue(_path)],
            new CsvOptions(
                OptionText.Number(_rate.Name, parsed.GetValue(_rate), SampleRate.LowestHz, SampleRate.HighestHz),
                FullScaleCounts: null,
                OptionText.Instant(_start.Name, parsed.GetValue(_start)),
                session.Say),
            SignalMap.Empty,
            session);
    }
}
