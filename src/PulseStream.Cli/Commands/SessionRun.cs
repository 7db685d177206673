using System.Runtime.ExceptionServices;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Output;
using PulseStream.Cli.Output.Terminal;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Sources;
using Spectre.Console;

namespace PulseStream.Cli.Commands;

/// <summary>Runs one recording after another from source to printer or screen, and archive.</summary>
/// <param name="order">How each is judged and kept.</param>
/// <param name="surroundings">Streams and clock.</param>
/// <param name="results">Standard output.</param>
/// <param name="printer">Shows events there.</param>
/// <param name="console">Shows a live session instead; null where it is printed like any other.</param>
internal sealed class SessionRun(SessionOrder order, Surroundings surroundings, ResultStream results, ResultPrinter printer, IAnsiConsole? console)
{
    private BedsideScreen? _screen;
    private bool _isAnnounced;

    /// <summary>Whether nobody reads on, and nothing is kept.</summary>
    public bool IsForNobody => results.HasLostReader && order.Archive is null;

    /// <summary>Whether an archive could not be written to the end.</summary>
    public bool IsArchiveLost { get; private set; }

    /// <summary>Tells of a session that still waits for its first sample.</summary>
    public void Announce(OpenedRecording opened)
    {
        if (console is null)
        {
            var judgement = SessionBeginning.JudgementOf(order, opened);
            Print(new SessionStarted(opened.Recording.Header, judgement), isLive: true);
        }

        _isAnnounced = true;
    }

    /// <summary>Says how it stands with the line: on the screen while there is one.</summary>
    /// <param name="line">In words.</param>
    /// <param name="isTrouble">Whether it stands until something else is said.</param>
    public void Say(string line, bool isTrouble)
    {
        if (_screen is { } screen)
        {
            screen.Say(isTrouble ? line : "");
        }
        else
        {
            order.Say(line);
        }
    }

    /// <summary>Runs a recording to its end, or until cancelled.</summary>
    /// <param name="opened">The recording.</param>
    /// <param name="isKept">Whether it goes into the archive, where there is one; one without a sample does not.</param>
    /// <param name="cancel">Ends it early.</param>
    public void Run(OpenedRecording opened, bool isKept, CancellationToken cancel)
    {
        var judgement = SessionBeginning.JudgementOf(order, opened);
        using var archive = isKept && order.Archive is { } folder ? SessionBeginning.Archive(folder, order, opened, judgement) : null;
        if (console is null || !opened.IsLive)
        {
            Measure(opened.Recording, judgement, archive, told => Print(told, opened.IsLive), cancel);
            return;
        }

        var screen = new BedsideScreen(console, surroundings.Clock, new BedsideView(opened.Recording.Header, judgement.Reading.HeldSeconds));
        using var watched = new WatchedRecording(opened.Recording, screen.See);
        _screen = screen;
        screen.Run(() => Measure(watched, judgement, archive, screen.Take, cancel));
        _screen = null;
    }

    private void Measure(Recording recording, Judgement judgement, SessionWriter? archive, Action<SessionEvent> show, CancellationToken cancel)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        ExceptionDispatchInfo? failure = null;
        using var session = MeasurementSession.Events(recording, judgement, archive, stop.Token).Subscribe(
            told =>
            {
                IsArchiveLost |= told is ArchiveLost;
                show(told);
                if (IsForNobody)
                {
                    stop.Cancel();
                }
            },
            problem => failure = ExceptionDispatchInfo.Capture(problem));
        failure?.Throw();
        results.Flush();
    }

    private void Print(SessionEvent told, bool isLive)
    {
        if (_isAnnounced && told is SessionStarted)
        {
            return;
        }

        if (told is ArchiveLost lost)
        {
            surroundings.Complain($"{lost.Problem} The session goes on; what was secured so far stays, nothing from here on is kept.");
        }

        printer.Print(told);
        if (isLive && told is SessionStarted or SecondJudged or AdviceGiven)
        {
            results.Flush();
        }
    }
}
