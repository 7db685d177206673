using System.Reactive.Linq;
using PulseStream.Archive;
using PulseStream.Sessions.Events;
using PulseStream.Sources;
using PulseStream.Triage;

namespace PulseStream.Sessions;

/// <summary>One session, live or replayed: joins a source, the reader, the triage and the archive, and nothing more.</summary>
public static class MeasurementSession
{
    /// <summary>
    /// The events of a session, pushed while subscribed. Completes after <see cref="SessionEnded"/>, at the end of the
    /// recording and on cancellation alike; whatever was received is archived and sealed by then. Subscribe once.
    /// </summary>
    /// <param name="recording">Open; stays the caller's to close.</param>
    /// <param name="judgement">By what it is judged.</param>
    /// <param name="archive">Where it is kept, sealed at the end; null where it is not. Stays the caller's to dispose.</param>
    /// <param name="cancel">Ends the session early, as if the recording ended there.</param>
    /// <exception cref="Samples.BadInputException">
    /// Arrives as OnError: the recording as a whole is refused, and its session is taken out of the archive; or the archive
    /// of a replay cannot be written, and its journal stays for <see cref="ArchiveRecovery"/>. A live session tells
    /// <see cref="ArchiveLost"/> and goes on.
    /// </exception>
    public static IObservable<SessionEvent> Events(Recording recording, Judgement judgement, SessionWriter? archive, CancellationToken cancel) =>
        Events(recording, judgement, archive, Observable.Empty<Feeling>(), cancel);

    /// <summary>
    /// The same with answers to the question how the person feels, each judged when it comes. Completes once both the
    /// recording and the answers have: an answer after <see cref="SessionEnded"/> still gets its advice, which is no
    /// longer archived.
    /// </summary>
    /// <param name="recording">Open; stays the caller's to close.</param>
    /// <param name="judgement">By what it is judged.</param>
    /// <param name="archive">Where it is kept, sealed at the end of the recording; null where it is not. Stays the caller's to dispose.</param>
    /// <param name="answers">How the person feels; may come from any thread.</param>
    /// <param name="cancel">Ends the recording early.</param>
    /// <exception cref="Samples.BadInputException">Arrives as OnError, as it does without answers.</exception>
    public static IObservable<SessionEvent> Events(
        Recording recording, Judgement judgement, SessionWriter? archive, IObservable<Feeling> answers, CancellationToken cancel) =>
        Observable.Defer(() =>
        {
            var course = new SessionCourse(recording.Header, judgement, archive);
            var told = recording is ShownRecording shown
                ? shown.Seconds.TakeWhile(_ => !cancel.IsCancellationRequested).ToObservable().Select(second => new Func<IEnumerable<SessionEvent>>(() => course.Take(second)))
                : recording.Blocks(cancel).Select(block => new Func<IEnumerable<SessionEvent>>(() => course.Read(block)));
            var measured = told
                .Do(static _ => { }, _ => archive?.Discard())
                .Concat(Observable.Return<Func<IEnumerable<SessionEvent>>>(() => course.Finish(recording.Tally, cancel.IsCancellationRequested)));

            // Merge lets one through at a time, so that the course is never told two things at once. Answers are heard
            // from the start: a recording may push its blocks while it is subscribed to.
            return answers
                .Select(feeling => new Func<IEnumerable<SessionEvent>>(() => course.Answer(feeling)))
                .Merge(measured)
                .SelectMany(static happened => happened())
                .StartWith(new SessionStarted(recording.Header, judgement));
        });
}
