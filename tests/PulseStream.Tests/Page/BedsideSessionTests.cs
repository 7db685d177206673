using System.Text.Json;
using PulseStream.Archive;
using PulseStream.Page;
using PulseStream.Page.Live;
using PulseStream.Readings;
using PulseStream.Sessions;
using PulseStream.Simulation;
using PulseStream.Tests.Cli;
using PulseStream.Triage;
using PulseStream.Triage.Policies;
using Xunit;

namespace PulseStream.Tests.Page;

public sealed class BedsideSessionTests
{
    private static readonly Judgement Default = new(CalibrationCurve.TextbookLine, new ReadingOptions(), TriagePolicy.AdultsAtHomeSeaLevel, new Circumstances(), []);

    [Fact]
    public void OnePipelineServesEveryViewer()
    {
        using var recording = new CountedRecording(new Scenario { DurationSeconds = 20 });
        using var session = Begin(recording);
        session.Broadcast.Join(session.Hello);
        session.Broadcast.Join(session.Hello);

        session.Run(Default, archive: null, CancellationToken.None);

        Assert.Equal(1, recording.Subscriptions);
    }

    [Fact]
    public async Task AReadingIsCountedUpToAndAdviceFollowsTheSitting()
    {
        var told = await ToldAfter(_ => { });
        var steady = told.Where(one => one.Name == PageNames.Second).Select(one => Json(one).GetProperty("steady").GetInt32()).Last();

        Assert.Equal(5, steady);
        Assert.InRange(Json(told.Last(one => one.Name == PageNames.Reading)).GetProperty("spo2").GetInt32(), 90, 100);
        Assert.Equal("usual", Level(told));
        Assert.Equal("ended", Json(told.Last(one => one.Name == PageNames.Link)).GetProperty("state").GetString());
    }

    [Fact]
    public async Task AnAnswerAfterTheEndIsStillJudged()
    {
        var told = await ToldAfter(session => session.Answer(Feeling.Severe));

        Assert.Equal("emergency", Level(told));
        Assert.Equal("severe", Json(told.Last(one => one.Name == PageNames.Feeling)).GetProperty("feeling").GetString());
    }

    [Fact]
    public async Task AnAnswerBeforeTheFirstSampleCountsAndShowsAtOnce()
    {
        var told = await ToldAfter(_ => { }, before: session => session.Answer(Feeling.Breathless));

        var shown = told.FindIndex(one => one.Name == PageNames.Feeling && one.Json.Contains("breathless", StringComparison.Ordinal));
        Assert.InRange(shown, 0, told.FindIndex(one => one.Name == PageNames.Session));
        Assert.Equal("doctor-now", Level(told));
    }

    [Fact]
    public async Task AnArchiveThatCanNoLongerBeWrittenIsSaidAndTheSessionGoesOn()
    {
        using var folder = new TemporaryFolder();
        using var recording = new CountedRecording(new Scenario { DurationSeconds = 20 });
        using var archive = SessionWriter.Create(
            folder["archive"], new SessionIdentity("s"), recording.Header, new SessionSettings("c", "{}", "p", "{}", "1"), JournalPace.Live);
        using var session = Begin(recording);
        var listening = session.Broadcast.Join(session.Hello);
        Directory.Delete(folder["archive"], recursive: true);

        session.Run(Default, archive, CancellationToken.None);

        session.Dispose();
        var told = await All(listening);
        Assert.Single(told, one => one.Name == PageNames.Unkept);
        Assert.Contains(told, one => one.Name == PageNames.Reading);
        Assert.NotNull(session.ArchiveProblem);
    }

    [Fact]
    public async Task ARefusedSecondCarriesItsSentenceAndNoNumber()
    {
        var first = Json((await ToldAfter(_ => { })).First(one => one.Name == PageNames.Second));

        Assert.False(first.GetProperty("usable").GetBoolean());
        Assert.Equal(JsonValueKind.Null, first.GetProperty("spo2").ValueKind);
        Assert.Equal(JsonValueKind.Null, first.GetProperty("pulse").ValueKind);
        Assert.Equal("Stay as you are: the signal is settling.", first.GetProperty("line").GetString());
    }

    [Fact]
    public async Task TheRightPersonIsAskedForAnewAfterASitting()
    {
        var told = await ToldAfter(_ => { }, before: session => session.PersonIs(isRight: true));
        Assert.Equal(JsonValueKind.Null, Json(told.Last(one => one.Name == PageNames.Person)).GetProperty("isRight").ValueKind);
    }

    private static BedsideSession Begin(CountedRecording recording) =>
        new(recording, Feeling.NotAsked, new BedsideOptions("hut-07", Archive: null, Speed: 1), new SteppedClock());

    // Twenty seconds in blocks of a quarter of one are fewer events than a viewer's queue holds.
    private static async Task<List<PageEvent>> ToldAfter(Action<BedsideSession> then, Action<BedsideSession>? before = null)
    {
        using var recording = new CountedRecording(new Scenario { DurationSeconds = 20 });
        var session = Begin(recording);
        var listening = session.Broadcast.Join(session.Hello);
        before?.Invoke(session);
        session.Run(Default, archive: null, CancellationToken.None);
        then(session);
        session.Dispose();
        return await All(listening);
    }

    private static async Task<List<PageEvent>> All(Viewer listening)
    {
        var all = new List<PageEvent>();
        await foreach (var told in listening.Events(TestContext.Current.CancellationToken))
        {
            all.Add(told);
        }

        return all;
    }

    private static string? Level(IEnumerable<PageEvent> told) => Json(told.Last(one => one.Name == PageNames.Advice)).GetProperty("level").GetString();

    private static JsonElement Json(PageEvent told) => JsonElement.Parse(told.Json);
}
