using PulseStream.Cli.Inputs;
using PulseStream.Comparison;
using PulseStream.Samples;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Commands;

/// <summary>
/// Runs recordings again, on all processors, for `compare --baseline`. Each is judged as its session was, with the history
/// that the archive holds, so that neither the order nor the number of processors shows in the results.
/// </summary>
internal sealed class BaselineRun(SessionOrder order, Surroundings surroundings, CancellationToken cancel)
{
    private readonly Lock _lock = new();
    private readonly long _began = surroundings.Clock.GetTimestamp();
    private TimeSpan _saidAfter;
    private int _done;

    /// <summary>What is made of every recording; each is replayed when its results are asked for. What an interrupted run over the same has finished is taken from its notes.</summary>
    /// <param name="paths">The recordings.</param>
    /// <param name="use">Asks for the results of each of them once, on as many threads as it likes.</param>
    public T Run<T>(IReadOnlyList<string> paths, Func<IReadOnlyList<ListedRecording>, T> use)
    {
        using var notes = ReplayNotes.Open(order.Archive!, ReplayKey.OfProgram(), ReplayKey.OfOrder(order, paths));
        var noted = paths.Count(path => notes.Of(path) is not null);
        if (noted > 0)
        {
            order.Say($"{noted} of {paths.Count} recordings were replayed before an interruption; the rest follows.");
        }

        try
        {
            var made = use([.. paths.Select(path => new Replayed(path, () => notes.Of(path) ?? Finish(path, notes, paths.Count - noted)))]);
            notes.Remove();
            return made;
        }
        catch (OperationCanceledException) when (notes.IsKept)
        {
            order.Say($"{noted + _done} of {paths.Count} recordings are replayed; the same command goes on from there.");
            throw;
        }
    }

    private static string? SessionOf(string path) => Directory.Exists(path) ? ArchivedResults.IdentityOf(path) : null;

    private RecordingResults Finish(string path, ReplayNotes notes, int all)
    {
        var results = RunOne(path);

        // A recording that was cut short by the cancellation is no result.
        cancel.ThrowIfCancellationRequested();
        if (results.Problem is null)
        {
            notes.Add(path, results);
        }

        TellProgress(all);
        return results;
    }

    private RecordingResults RunOne(string path)
    {
        try
        {
            using var opened = RecordingPaths.Open(path, Stream.Null, new CsvOptions(), SignalMap.Empty, cancel);
            var judgement = SessionBeginning.JudgementOf(order, opened);
            var found = new RecordingResultsBuilder(
                opened.Recording.Header.Source,
                JudgedBy.Of(judgement.Curve.Name, judgement.CurveHash, judgement.Policy.Name, judgement.PolicyHash, ProgramVersion.Text));
            Exception? failure = null;
            using (MeasurementSession.Events(opened.Recording, judgement, archive: null, cancel).Subscribe(told => Take(found, told), problem => failure = problem))
            {
                return failure is null ? found.Build() with { Session = opened.Session is null ? null : ArchivedResults.IdentityOf(path) } : throw failure;
            }
        }
        catch (Exception problem) when (problem is BadInputException or IOException or UnauthorizedAccessException)
        {
            return new RecordingResults(path) { Session = SessionOf(path), Problem = problem.Message };
        }
    }

    private static void Take(RecordingResultsBuilder found, SessionEvent told)
    {
        switch (told)
        {
            case SecondJudged { Second: var second }:
                found.AddSecond(second.IsUsable);
                break;
            case ReadingAccepted { Reading: var reading }:
                found.Add(new AcceptedValue(reading.SecondIndex, reading.WholeSpo2Percent));
                break;
            case SittingEnded { Sitting: var sitting }:
                found.Add(new FingerSpan(sitting.FromSecond, sitting.ToSecond));
                break;
            case AdviceGiven { Advice: var advice }:
                found.Add(new GivenLevel(advice.SecondIndex ?? found.Seconds, advice.Level));
                break;
            default:
                break;
        }
    }

    private void TellProgress(int all)
    {
        lock (_lock)
        {
            _done++;
            var elapsed = surroundings.Clock.GetElapsedTime(_began);
            if (elapsed - _saidAfter >= TimeSpan.FromSeconds(1) || (_done == all && _saidAfter > TimeSpan.Zero))
            {
                _saidAfter = elapsed;
                order.Say($"{_done} of {all} recordings replayed, {(all - _done) * elapsed.TotalSeconds / _done:0} s left.");
            }
        }
    }

    private sealed class Replayed(string path, Func<RecordingResults> replay) : ListedRecording
    {
        public override string? Session => SessionOf(path);

        public override string Source => Directory.Exists(path) ? ArchivedResults.SourceOf(path) : path;

        public override RecordingResults Read() => replay();
    }
}
