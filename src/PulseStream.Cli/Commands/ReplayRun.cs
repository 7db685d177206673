using System.Runtime.ExceptionServices;
using PulseStream.Cli.Inputs;
using PulseStream.Archive;
using PulseStream.Cli.Output;
using PulseStream.Cli.Output.Terminal;
using PulseStream.Samples;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Sources;
using Spectre.Console;

namespace PulseStream.Cli.Commands;

/// <summary>Runs recordings one after the other, from source to printer and archive.</summary>
/// <param name="order">What was asked for.</param>
/// <param name="surroundings">Streams and clock.</param>
/// <param name="results">Standard output.</param>
/// <param name="printer">Shows events there.</param>
/// <param name="console">Shows a live session instead; null where it is printed like any other.</param>
internal sealed class ReplayRun(ReplayOrder order, Surroundings surroundings, ResultStream results, ResultPrinter printer, IAnsiConsole? console)
{
    private bool isArchiveLost;

    public int Run(CancellationToken cancel)
    {
        SessionBeginning.PrepareArchive(order);
        var (done, refused) = (0, 0);
        foreach (var path in order.Paths)
        {
            foreach (var recording in Attempt(() => RecordingPaths.Expand(path, order.Say), ref refused) ?? [])
            {
                done += Attempt(() => RunOne(recording, cancel), ref refused) ? 1 : 0;
                if (cancel.IsCancellationRequested)
                {
                    return ExitStatus.Cancelled;
                }

                if (IsForNobody)
                {
                    return ExitStatus.Done;
                }
            }
        }

        return isArchiveLost ? ExitStatus.BadInput : refused == 0 ? ExitStatus.Done : done > 0 ? ExitStatus.NotAll : ExitStatus.BadInput;
    }

    // Nobody reads on, and nothing is kept.
    private bool IsForNobody => results.HasLostReader && order.Archive is null;

    private T? Attempt<T>(Func<T> work, ref int refused)
    {
        try
        {
            return work();
        }
        catch (BadInputException problem)
        {
            // What the recording has told so far comes before what is said of it.
            results.Flush();
            surroundings.Complain(problem.Message);
            refused++;
            return default;
        }
    }

    private bool RunOne(string path, CancellationToken cancel)
    {
        using var opened = RecordingPaths.Open(path, surroundings.Input, order.Csv, cancel);
        var judgement = SessionBeginning.JudgementOf(order, opened);
        using var archive = order.Archive is { } folder ? SessionBeginning.Archive(folder, order, opened, judgement) : null;
        if (console is null || !opened.IsLive)
        {
            Measure(opened.Recording, judgement, archive, told => Show(told, opened.IsLive), cancel);
            return true;
        }

        var screen = new BedsideScreen(console, surroundings.Clock, new BedsideView(opened.Recording.Header, judgement.Reading.HeldSeconds));
        using var watched = new WatchedRecording(opened.Recording, screen.See);
        screen.Run(() => Measure(watched, judgement, archive, screen.Take, cancel));
        return true;
    }

    private void Measure(Recording recording, Judgement judgement, SessionWriter? archive, Action<SessionEvent> show, CancellationToken cancel)
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        ExceptionDispatchInfo? failure = null;
        using var session = MeasurementSession.Events(recording, judgement, archive, stop.Token).Subscribe(
            told =>
            {
                isArchiveLost |= told is ArchiveLost;
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

    private void Show(SessionEvent told, bool isLive)
    {
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
