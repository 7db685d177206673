using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sessions.Events;
using PulseStream.Signal;
using PulseStream.Triage;

namespace PulseStream.Sessions;

/// <summary>The state of one session: what the blocks so far have told, and where it is kept.</summary>
internal sealed class SessionCourse : IReadingObserver
{
    private readonly SampleRate _rate;
    private readonly FingerReader? _reader;
    private readonly ReadingKeeper _shown;
    private readonly SittingTriage _triage;
    private SessionWriter? _archive;
    private List<SessionEvent> _told = [];
    private long _seconds;
    private long _usableSeconds;
    private long _readings;
    private Feeling _feeling;

    public SessionCourse(RecordingHeader header, Judgement judgement, SessionWriter? archive)
    {
        _rate = header.Rate;
        _reader = header.Columns == SampleColumns.None ? null : new FingerReader(header, judgement.Curve, judgement.Reading);
        _shown = new ReadingKeeper(judgement.Reading);
        _triage = new SittingTriage(judgement.Policy, judgement.Circumstances, judgement.History);
        _archive = archive;
        _feeling = _triage.Feeling;
    }

    public IEnumerable<SessionEvent> Answer(Feeling feeling)
    {
        var advice = _triage.Answer(feeling);
        TellFeeling();
        if (advice is not null)
        {
            Tell(advice with { SecondIndex = _seconds });
        }

        return TakeTold();
    }

    public IEnumerable<SessionEvent> Read(SampleBlock block)
    {
        Keep(archive => archive.Append(block));
        _reader?.Read(block, this);
        return TakeTold();
    }

    /// <summary>Takes a second that an instrument has judged.</summary>
    public IEnumerable<SessionEvent> Take(Second second)
    {
        _shown.Take(second, ShownRecording.HasFinger(second), this);
        return TakeTold();
    }

    public IEnumerable<SessionEvent> Finish(SampleTally tally, bool isCancelled)
    {
        _reader?.Finish(this);
        _shown.Finish(this);

        // A live session ends when somebody ends it; a replay that was cancelled lacks the rest of its recording.
        Keep(archive => archive.Seal(tally, isCancelled && archive.Pace == JournalPace.Replay));

        // An answer may still come; what is sealed stays as it is.
        _archive = null;
        _told.Add(new SessionEnded(tally, _seconds, _usableSeconds, _readings));
        return TakeTold();
    }

    public void OnBeat(in Beat beat)
    {
        var kept = beat;
        Keep(archive => archive.Append(in kept));
        _told.Add(new BeatFound(beat, _rate.SecondsAt(beat.RiseIndex)));
    }

    public void OnSecond(in Second second)
    {
        var kept = second;
        _seconds++;
        _usableSeconds += second.IsUsable ? 1 : 0;
        Keep(archive => archive.Append(kept));
        _told.Add(new SecondJudged(second, _reader?.SteadySeconds ?? _shown.SteadySeconds));
    }

    public void OnReading(Reading reading)
    {
        _readings++;
        Keep(archive => archive.Append(reading));
        _told.Add(new ReadingAccepted(reading));
        var advice = _triage.Follow(reading);
        TellFeeling();
        if (advice is not null)
        {
            Tell(advice);
        }
    }

    public void OnSitting(Sitting sitting)
    {
        Keep(archive => archive.Append(sitting));
        _told.Add(new SittingEnded(sitting));
        var advice = _triage.Close(sitting);
        TellFeeling();
        Tell(advice);
    }

    private void TellFeeling()
    {
        if (_feeling != _triage.Feeling)
        {
            _feeling = _triage.Feeling;
            _told.Add(new FeelingHeld(_feeling));
        }
    }

    private void Tell(Advice advice)
    {
        var kept = new ArchivedAdvice(
            advice.SecondIndex ?? _seconds,
            AdviceLevelName.Of(advice.Level),
            advice.Text,
            advice.RecheckAfterMinutes,
            string.Join("; ", advice.Because));
        Keep(archive => archive.Append(kept));
        _told.Add(new AdviceGiven(advice));
    }

    // The samples of a live session exist nowhere else: whoever sits in front of it still needs the number. A replay can be
    // run again, so there the fault ends it.
    private void Keep(Action<SessionWriter> write)
    {
        try
        {
            if (_archive is not null)
            {
                write(_archive);
            }
        }
        catch (BadInputException problem) when (_archive is { Pace: JournalPace.Live })
        {
            _archive = null;
            _told.Add(new ArchiveLost(problem.Message));
        }
    }

    // Operators may keep what they are handed: the list is never written again.
    private List<SessionEvent> TakeTold()
    {
        var told = _told;
        _told = [];
        return told;
    }
}
