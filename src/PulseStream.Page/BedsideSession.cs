using System.Reactive.Subjects;
using System.Runtime.ExceptionServices;
using PulseStream.Archive;
using PulseStream.Page.Live;
using PulseStream.Samples;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Sources;
using PulseStream.Triage;

namespace PulseStream.Page;

/// <summary>One session at the bedside: one pipeline, whose events every open page is told, and the answers that come back.</summary>
public sealed class BedsideSession : IDisposable
{
    private readonly Lock _gate = new();

    // An answer given while the instrument is waited for counts once the session has begun.
    private readonly ReplaySubject<Feeling> _answers = new(1);
    private readonly Recording _recording;
    private readonly BedsideOptions _options;
    private readonly TimeProvider _clock;
    private readonly LinkWatch _link;
    private readonly WaveCutter _wave;
    private int _heldSeconds;
    private bool _hasBegun;
    private IDisposable? _session;

    /// <summary>A session that has not begun.</summary>
    /// <param name="recording">Open; stays the caller's to close.</param>
    /// <param name="feeling">How the person feels, as far as it was told beforehand.</param>
    /// <param name="options">What the page is told beside the events.</param>
    /// <param name="clock">Says when something was told, and notices silence.</param>
    public BedsideSession(Recording recording, Feeling feeling, BedsideOptions options, TimeProvider clock)
    {
        _recording = recording;
        _options = options;
        _clock = clock;
        _wave = new(recording.Header, clock);
        _link = new(clock, link => Broadcast.Tell(PageMessage.Link(link)));
        Broadcast.Tell(PageMessage.Person(options.Person, isRight: null));
        Broadcast.Tell(PageMessage.Feeling(feeling));
    }

    /// <summary>Where events go.</summary>
    internal Broadcast Broadcast { get; } = new();

    /// <summary>The first words to a new viewer.</summary>
    internal PageEvent Hello => PageMessage.Hello(_clock.GetUtcNow(), _options.Archive is not null);

    /// <summary>Why the archive could no longer be written; null while it can, or where there is none.</summary>
    public string? ArchiveProblem { get; private set; }

    /// <summary>Measures until the recording ends or <paramref name="cancel"/> is set; the archive is sealed by then. Once.</summary>
    /// <param name="judgement">By what it is judged.</param>
    /// <param name="archive">Where it is kept; null where it is not. Stays the caller's to dispose.</param>
    /// <param name="cancel">Ends the session early.</param>
    /// <exception cref="BadInputException">The recording as a whole cannot be used.</exception>
    public void Run(Judgement judgement, SessionWriter? archive, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(judgement);
        _heldSeconds = judgement.Reading.HeldSeconds;
        lock (_gate)
        {
            _hasBegun = true;
        }

        ExceptionDispatchInfo? failure = null;
        using var watched = new WatchedRecording(_recording, See);
        _session = MeasurementSession.Events(watched, judgement, archive, _answers, cancel)
            .Subscribe(Tell, problem => failure = ExceptionDispatchInfo.Capture(problem));
        failure?.Throw();
    }

    /// <summary>Says how it stands with the source, where the source knows it itself.</summary>
    /// <param name="link">The state.</param>
    public void LinkIs(PageLink link) => _link.Is(link);

    /// <summary>Takes an answer to how the person feels; the advice is judged again.</summary>
    /// <param name="feeling">The answer; <see cref="Feeling.NotAsked"/> opens the question again.</param>
    public void Answer(Feeling feeling)
    {
        // Answers come from any page; an observable is told one thing at a time.
        lock (_gate)
        {
            if (!_hasBegun)
            {
                Broadcast.Tell(PageMessage.Feeling(feeling));
            }

            _answers.OnNext(feeling);
        }
    }

    /// <summary>Takes an answer to whether the right person is in front of the page.</summary>
    /// <param name="isRight">Whether it is.</param>
    public void PersonIs(bool isRight) => Broadcast.Tell(PageMessage.Person(_options.Person, isRight));

    /// <summary>Closes every page's stream, which a server that stops would wait for.</summary>
    public void End() => Broadcast.End();

    /// <summary>Closes every page's stream.</summary>
    public void Dispose()
    {
        _session?.Dispose();
        _link.Dispose();
        _answers.Dispose();
        End();
    }

    private void See(SampleBlock block)
    {
        _link.Saw();
        foreach (var told in _wave.Cut(block))
        {
            Broadcast.Tell(told);
        }
    }

    private void Tell(SessionEvent told)
    {
        ArchiveProblem = (told as ArchiveLost)?.Problem ?? ArchiveProblem;
        if (MessageOf(told) is { } message)
        {
            Broadcast.Tell(message);
        }

        if (told is SittingEnded)
        {
            // The finger has left: the next one may be somebody else's.
            Broadcast.Tell(PageMessage.Person(_options.Person, isRight: null));
        }

        if (told is SessionEnded)
        {
            _link.Is(PageLink.Ended);
        }
    }

    private PageEvent? MessageOf(SessionEvent told) => told switch
    {
        SessionStarted started => PageMessage.Session(started, _heldSeconds, _options.Speed),
        SecondJudged second => PageMessage.Second(second, _heldSeconds),
        ReadingAccepted accepted => PageMessage.Reading(accepted.Reading, _clock.GetUtcNow()),
        SittingEnded ended => PageMessage.Sitting(ended.Sitting, _clock.GetUtcNow()),
        AdviceGiven given => PageMessage.Advice(given.Advice, _clock.GetUtcNow()),
        ArchiveLost lost => PageMessage.Unkept(lost.Problem),
        FeelingHeld held => PageMessage.Feeling(held.Feeling),
        _ => null,
    };
}
