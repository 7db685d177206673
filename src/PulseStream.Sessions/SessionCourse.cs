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
    private readonly FingerReader _reader;
    private readonly SittingTriage _triage;
    private readonly SessionWriter? _archive;
    private List<SessionEvent> _told = [];
    private long _seconds;
    private long _usableSeconds;
    private long _readings;

    public SessionCourse(RecordingHeader header, Judgement judgement, SessionWriter? archive)
    {
        _rate = header.Rate;
        _reader = new FingerReader(header, judgement.Curve, judgement.Reading);
        _triage = new SittingTriage(judgement.Policy, judgement.Circumstances, judgement.History);
        _archive = archive;
    }

    public IEnumerable<SessionEvent> Read(SampleBlock block)
    {
        _archive?.Append(block);
        _reader.Read(block, this);
        return TakeTold();
    }

    public IEnumerable<SessionEvent> Finish(SampleTally tally)
    {
        _reader.Finish(this);
        _archive?.Seal(tally);
        _told.Add(new SessionEnded(tally, _seconds, _usableSeconds, _readings));
        return TakeTold();
    }

    public void OnBeat(in Beat beat)
    {
        _archive?.Append(in beat);
        _told.Add(new BeatFound(beat, _rate.SecondsAt(beat.RiseIndex)));
    }

    public void OnSecond(Second second)
    {
        _seconds++;
        _usableSeconds += second is UsableSecond ? 1 : 0;
        _archive?.Append(second);
        _told.Add(new SecondJudged(second));
    }

    public void OnReading(Reading reading)
    {
        _readings++;
        _archive?.Append(reading);
        _told.Add(new ReadingAccepted(reading));
        if (_triage.Follow(reading) is { } advice)
        {
            Tell(advice);
        }
    }

    public void OnSitting(Sitting sitting)
    {
        _archive?.Append(sitting);
        _told.Add(new SittingEnded(sitting));
        Tell(_triage.Close(sitting));
    }

    private void Tell(Advice advice)
    {
        _archive?.Append(new ArchivedAdvice(
            advice.SecondIndex ?? _seconds,
            AdviceLevelName.Of(advice.Level),
            advice.Text,
            advice.RecheckAfterMinutes,
            string.Join("; ", advice.Because)));
        _told.Add(new AdviceGiven(advice));
    }

    // Operators may keep what they are handed: the list is never written again.
    private List<SessionEvent> TakeTold()
    {
        var told = _told;
        _told = [];
        return told;
    }
}
