using PulseStream.Cli.Inputs;
using PulseStream.Cli.Output;
using PulseStream.Samples;
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
    public int Run(CancellationToken cancel)
    {
        SessionBeginning.PrepareArchive(order.Session);
        var session = new SessionRun(order.Session, surroundings, results, printer, console);
        var (done, refused) = (0, 0);
        foreach (var path in order.Paths)
        {
            foreach (var recording in Attempt(() => RecordingPaths.Expand(path, order.Session.Say), ref refused) ?? [])
            {
                done += Attempt(() => RunOne(session, recording, cancel), ref refused) ? 1 : 0;
                if (cancel.IsCancellationRequested)
                {
                    return ExitStatus.Cancelled;
                }

                if (session.IsForNobody)
                {
                    return ExitStatus.Done;
                }
            }
        }

        return session.IsArchiveLost ? ExitStatus.BadInput : refused == 0 ? ExitStatus.Done : done > 0 ? ExitStatus.NotAll : ExitStatus.BadInput;
    }

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

    private bool RunOne(SessionRun session, string path, CancellationToken cancel)
    {
        using var opened = order.AreReadings
            ? new OpenedRecording(ShownFile.Open(path, surroundings.Input, order.Csv), Session: null, IsLive: false)
            : RecordingPaths.Open(path, surroundings.Input, order.Csv, order.Map, cancel);
        session.Run(opened, isKept: true, cancel);
        return true;
    }
}
