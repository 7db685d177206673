using System.Reactive.Subjects;
using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Simulation;
using PulseStream.Simulation.Tracks;
using PulseStream.Tests.Cli;
using PulseStream.Triage;
using PulseStream.Triage.Policies;
using Xunit;

namespace PulseStream.Tests.Sessions;

public sealed class MeasurementSessionTests
{
    private static readonly Judgement Default = new(CalibrationCurve.TextbookLine, new ReadingOptions(), TriagePolicy.AdultsAtHomeSeaLevel, new Circumstances(), []);

    [Fact]
    public void ASessionStartsAndEnds()
    {
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 20 });

        var told = Told(recording, archive: null);

        Assert.IsType<SessionStarted>(told[0]);
        var ended = Assert.IsType<SessionEnded>(told[^1]);
        Assert.Equal((2000, 20), (ended.Tally.Samples, ended.Seconds));
        Assert.IsType<AdviceGiven>(told[^2]);
        Assert.IsType<SittingEnded>(told[^3]);
    }

    [Fact]
    public void BeatsComeBeforeTheirSecond()
    {
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 20 });
        var told = Told(recording, archive: null);

        var second = 0L;
        foreach (var happened in told)
        {
            second = happened is SecondJudged judged ? judged.Second.SecondIndex + 1 : second;
            Assert.True(happened is not BeatFound beat || beat.Seconds < second + 1);
        }
    }

    [Fact]
    public void ALowReadingIsAdvisedOnAtOnce()
    {
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 30, Spo2 = Track.Constant(84) });

        var told = Told(recording, archive: null);

        var first = told.ToList().FindIndex(happened => happened is ReadingAccepted);
        Assert.Equal(AdviceLevel.DoctorNow, Assert.IsType<AdviceGiven>(told[first + 1]).Advice.Level - 1);
    }

    [Fact]
    public void TheArchiveIsSealedBeforeTheEndIsTold()
    {
        using var folder = new TemporaryFolder();
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 20 });
        using var archive = Begin(folder, recording);
        var sealedAtEnd = false;

        MeasurementSession.Events(recording, Default, archive, CancellationToken.None)
            .Subscribe(happened => sealedAtEnd |= happened is SessionEnded && SessionArchive.IsSession(archive.Folder));

        Assert.True(sealedAtEnd);
        Assert.Equal(2000, ArchivedSession.Open(archive.Folder).Counts.Samples);
        Assert.False(ArchivedSession.Open(archive.Folder).IsCancelled);
    }

    [Fact]
    public void AnAnswerDuringTheSessionIsHeldJudgedAndArchived()
    {
        using var folder = new TemporaryFolder();
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 20 });
        using var archive = Begin(folder, recording);
        using var answers = new Subject<Feeling>();
        var told = new List<SessionEvent>();

        MeasurementSession.Events(recording, Default, archive, answers, CancellationToken.None).Subscribe(happened =>
        {
            told.Add(happened);
            if (happened is SecondJudged { Second.SecondIndex: 12 })
            {
                answers.OnNext(Feeling.Breathless);
            }
        });

        var held = told.FindIndex(happened => happened is FeelingHeld { Feeling: Feeling.Breathless });
        Assert.InRange(held, 1, told.Count - 2);
        Assert.Equal(AdviceLevel.DoctorNow, told.OfType<AdviceGiven>().Last().Advice.Level);
        var kept = ArchivedSession.Open(archive.Folder).Advice().ToList();
        Assert.Equal(told.OfType<AdviceGiven>().Select(given => given.Advice.Text), kept.Select(advice => advice.Text), StringComparer.Ordinal);
    }

    [Fact]
    public void ACancelledSessionEndsLikeAnyOther()
    {
        using var folder = new TemporaryFolder();
        using var cancel = new CancellationTokenSource();
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 60 });
        using var archive = Begin(folder, recording);
        SessionEvent? last = null;

        MeasurementSession.Events(recording, Default, archive, cancel.Token).Subscribe(happened =>
        {
            last = happened;
            if (happened is SecondJudged { Second.SecondIndex: 10 })
            {
                cancel.Cancel();
            }
        });

        Assert.Equal(11, Assert.IsType<SessionEnded>(last).Seconds);
        Assert.Equal(11, ArchivedSession.Open(archive.Folder).Seconds().Count());
        Assert.Equal(archive.Pace == JournalPace.Replay, ArchivedSession.Open(archive.Folder).IsCancelled);
    }

    [Fact]
    public void ARecordingRefusedMidwayLeavesNoSession()
    {
        using var folder = new TemporaryFolder();
        using var recording = new ScriptedRecording(new Scenario { DurationSeconds = 20 }, new BadInputException("night.csv", "it is broken", "Mend it"));
        using var archive = Begin(folder, recording);
        Exception? failure = null;
        var ended = false;

        MeasurementSession.Events(recording, Default, archive, CancellationToken.None)
            .Subscribe(happened => ended |= happened is SessionEnded, problem => failure = problem);

        Assert.IsType<BadInputException>(failure);
        Assert.False(ended);
        Assert.False(Directory.Exists(archive.Folder));
    }

    private static SessionEvent[] Told(ScriptedRecording recording, SessionWriter? archive)
    {
        var told = new List<SessionEvent>();
        MeasurementSession.Events(recording, Default, archive, CancellationToken.None).Subscribe(told.Add);
        return [.. told];
    }

    private static SessionWriter Begin(TemporaryFolder folder, ScriptedRecording recording) => SessionWriter.Create(
        folder["archive"], new SessionIdentity("s"), recording.Header, new SessionSettings("c", "{}", "p", "{}", "1"), JournalPace.Replay);
}
