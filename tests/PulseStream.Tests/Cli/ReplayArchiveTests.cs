using System.Text;
using PulseStream.Archive;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class ReplayArchiveTests
{
    [Fact]
    public void ARefusedRecordingLeavesNoSession()
    {
        using var folder = new TemporaryFolder();
        var rows = File.ReadAllLines(Recordings.WarmFinger);
        var path = folder.Write("broken.csv", string.Join('\n', rows.Select((row, at) => at > 1000 ? row + "x" : row)));

        var run = ProgramRun.Of("replay", path, "--archive", folder["archive"], "--quiet");

        run.IsRefused();
        ProgramRun.Of("advise", "--spo2", "97", "--archive", folder["archive"]);
        Assert.Empty(Directory.GetFiles(folder["archive"], "*", SearchOption.AllDirectories));
    }

    [Fact]
    public void ACancelledSessionIsSealedWithWhatWasReceived()
    {
        using var folder = new TemporaryFolder();
        using var cancel = new CancellationTokenSource();
        using var input = new SilentAfter(Encoding.UTF8.GetBytes(File.ReadAllText(Recordings.WarmFinger)), cancel);

        var run = ProgramRun.Cancelled(input, cancel.Token, "replay", "-", "--archive", folder["archive"], "--format", "ndjson");

        Assert.Equal(130, run.Status);
        Assert.Equal(3750, Assert.Single(run.Objects("end")).GetProperty("samples").GetInt64());
        var session = ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(folder["archive"])));
        session.Verify();
        Assert.Equal(3750, session.Counts.Samples);
    }

    [Fact]
    public void TheCheckAnHourLaterFindsTheFirstReading()
    {
        using var folder = new TemporaryFolder();
        var first = folder["first.csv"];
        ProgramRun.Of("simulate", first, "--seconds", "75", "--spo2", "92");
        string[] common = ["--archive", folder["archive"], "--person", "guest-7", "--format", "ndjson"];

        ProgramRun.Of(["replay", first, "--start", "2026-03-01T07:00:00+01:00", .. common]);
        var later = ProgramRun.Of(["replay", first, "--start", "2026-03-01T08:00:00+01:00", .. common]);
        var stranger = ProgramRun.Of("replay", first, "--start", "2026-03-01T08:00:00+01:00", "--archive", folder["archive"], "--person", "guest-8", "--format", "ndjson");

        Assert.Equal("call", later.Objects("advice").Last().GetProperty("level").GetString());
        Assert.Equal("recheck", stranger.Objects("advice").Last().GetProperty("level").GetString());
    }

    [Fact]
    public void AdviseFindsTheEarlierReadingOfThePerson()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("simulate", folder["first.csv"], "--seconds", "75", "--spo2", "92");
        ProgramRun.Of("replay", folder["first.csv"], "--archive", folder["archive"], "--person", "guest-7", "--start", "2026-03-01T07:00:00Z");

        var advice = ProgramRun.Of("advise", "--spo2", "92", "--archive", folder["archive"], "--person", "guest-7", "--format", "ndjson");

        Assert.Equal("call", Assert.Single(advice.Objects("advice")).GetProperty("level").GetString());
    }

    [Fact]
    public void SensorSiteAndFileNameAreKeptAndNoFolder()
    {
        using var folder = new TemporaryFolder();

        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder["archive"], "--sensor", "clip-3", "--site", "index-left");

        var session = ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(folder["archive"])));
        Assert.Equal(("clip-3", "index-left"), (session.Identity.Sensor, session.Identity.Site));
        Assert.Equal("warm-finger.csv", session.Header.Source);
    }

    [Fact]
    public void AnArchivedSessionIsJudgedAgainByItsOwnCurve()
    {
        using var folder = new TemporaryFolder();
        var curve = folder.Write("curve.json", """{ "name": "clip-3", "coefficients": [108, -25], "from": 0.4, "to": 2 }""");
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder["archive"], "--curve", curve);

        var again = ProgramRun.Of("replay", folder["archive"], "--format", "ndjson");

        Assert.Equal("clip-3", Assert.Single(again.Objects("session")).GetProperty("curve").GetString());
        Assert.All(again.Objects("reading"), reading => Assert.Equal(95, reading.GetProperty("spo2").GetInt32()));
    }

    /// <summary>A pipe that falls silent after its bytes; whoever waits on it has the command cancelled.</summary>
    private sealed class SilentAfter(byte[] bytes, CancellationTokenSource cancel) : MemoryStream(bytes)
    {
        public override bool CanSeek => false;

        public override async ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            var count = Read(buffer.Span);
            if (count == 0)
            {
                await cancel.CancelAsync();
                await Task.Delay(Timeout.Infinite, cancellationToken);
            }

            return count;
        }
    }
}
