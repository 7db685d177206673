using System.Reactive.Linq;
using PulseStream.Archive;
using PulseStream.Sessions.Events;
using PulseStream.Sources;

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
        Observable.Defer(() =>
        {
            var course = new SessionCourse(recording.Header, judgement, archive);
            return recording.Blocks(cancel)
                .Do(static _ => { }, _ => archive?.Discard())
                .Select(course.Read)
                .Concat(Observable.Defer(() => Observable.Return(course.Finish(recording.Tally))))
                .SelectMany(static told => told)
                .StartWith(new SessionStarted(recording.Header, judgement.Curve.Name, judgement.Policy.Name));
        });
}
