using System.Globalization;
using System.Reactive.Linq;
using PulseStream.Archive;
using PulseStream.Simulation;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Whole.Cable;

/// <summary>The program on a pseudo-terminal, with an instrument that the program plays itself.</summary>
public sealed class CableTests
{
    private const double LayoutHz = 50;

    // Cables pulled and programs killed; a night of it is asked for by name.
    private static readonly int Trials = int.Parse(Environment.GetEnvironmentVariable("PULSESTREAM_CABLE_TRIALS") ?? "10", CultureInfo.InvariantCulture);

    [Theory]
    [InlineData("hut-text")]
    [InlineData("hut-binary")]
    public void ALiveRecordingGivesWhatItsReplayGives(string layout)
    {
        PulledCable.SkipWhereLacking();
        using var cable = new PulledCable();
        using var reader = Read(cable, layout, "--give-up-after", "2");
        reader.WaitUntilSaid("waiting for the instrument's first byte");
        using var player = new LiveProgram("simulate", "--to", cable.Instrument, "--layout", LiveProgram.Layout(layout), "--play", Recordings.SlowFall, "--speed", "30");

        Assert.Equal(0, player.ExitStatus());
        Assert.Equal(3, reader.ExitStatus());

        var replayed = ProgramRun.Of("replay", Recordings.SlowFall, "--format", "ndjson", "--beats", "--quiet", "--full-scale", "262143");
        Assert.Equal(replayed.Lines[1..], reader.Output[1..]);
    }

    [Fact]
    public async Task EverySampleIsAccountedForHoweverTheCableIsPulled()
    {
        PulledCable.SkipWhereLacking();
        var chance = new Random(20260118);
        using var folder = new TemporaryFolder();
        using var cable = new PulledCable();
        using var reader = Read(cable, "hut-binary", "--archive", folder["archive"]);
        reader.WaitUntilSaid("waiting for the instrument's first byte");
        using var player = Play(cable, seconds: 3600);
        reader.WaitUntil(program => program.Seconds >= 2);
        for (var trial = 1; trial <= Trials; trial++)
        {
            var (seconds, back) = (reader.Seconds, trial);
            cable.Pull();
            await Task.Delay(chance.Next(50, 1500), TestContext.Current.CancellationToken);
            cable.Plug();
            reader.WaitUntil(program => program.Error.Count(line => line.Contains("back after", StringComparison.Ordinal)) == back && program.Seconds > seconds);
            await Task.Delay(chance.Next(50, 500), TestContext.Current.CancellationToken);
        }

        Assert.Equal(130, reader.Interrupt());

        var session = ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(folder["archive"])));
        session.Verify();
        IsWhatWasSent(session);
        Assert.Equal(session.Counts.Samples, reader.End.GetProperty("samples").GetInt64());
        Assert.Equal(session.Counts.Missing, reader.End.GetProperty("missing").GetInt64());
        Assert.True(session.Counts.Missing > 0);
        Assert.Equal(reader.Output, ProgramRun.Of("replay", session.Folder, "--format", "ndjson", "--beats", "--quiet").Lines);
    }

    [Fact]
    public async Task AKillCostsTheLastSecondAtMost()
    {
        PulledCable.SkipWhereLacking();
        var chance = new Random(20260119);
        using var folder = new TemporaryFolder();
        for (var trial = 1; trial <= Trials; trial++)
        {
            using var cable = new PulledCable();
            using var reader = Read(cable, "hut-binary", "--archive", folder["archive"]);
            reader.WaitUntilSaid("waiting for the instrument's first byte");
            using var player = Play(cable, seconds: 3600);
            reader.WaitUntil(program => program.Seconds >= 1);
            await Task.Delay(chance.Next(0, 800), TestContext.Current.CancellationToken);

            reader.Kill();

            var told = reader.Seconds;
            var next = ProgramRun.Of("replay", folder["archive"], "--format", "ndjson");
            var sessions = SessionArchive.Sessions(folder["archive"]).Select(ArchivedSession.Open).ToList();
            Assert.Equal(0, next.Status);
            Assert.Equal(trial, sessions.Count);
            var killed = sessions.MaxBy(session => session.Header.Start)!;
            killed.Verify();
            Assert.True(killed.IsRecovered);
            Assert.True(killed.Counts.Samples >= (told - 1) * LayoutHz, $"{killed.Counts.Samples} samples of {told} s told");
            IsWhatWasSent(killed);
        }
    }

    [Fact]
    public void ServeBeginsItsSessionWithTheFirstByteAndSealsIt()
    {
        PulledCable.SkipWhereLacking();
        using var folder = new TemporaryFolder();
        using var cable = new PulledCable();
        using var server = new LiveProgram("serve", cable.Reader, "--layout", LiveProgram.Layout("hut-binary"), "--archive", folder["archive"], "--port", "0");
        server.WaitUntilSaid("waiting for the instrument's first byte");
        Assert.Empty(Directory.EnumerateFiles(folder.Path, "*", SearchOption.AllDirectories));
        using var player = Play(cable, seconds: 4);
        Assert.Equal(0, player.ExitStatus());
        server.WaitUntilSaid("nothing has come for 2 s");

        Assert.Equal(130, server.Interrupt());

        var session = ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(folder["archive"])));
        session.Verify();
        IsWhatWasSent(session);
        Assert.Equal(4 * LayoutHz, session.Counts.Samples);
    }

    [Fact]
    public void AnInstrumentThatNeverSpeaksLeavesNoSessionBehind()
    {
        PulledCable.SkipWhereLacking();
        using var folder = new TemporaryFolder();
        using var cable = new PulledCable();
        using var server = new LiveProgram("serve", cable.Reader, "--layout", LiveProgram.Layout("hut-text"), "--archive", folder["archive"], "--port", "0");
        server.WaitUntilSaid("waiting for the instrument's first byte");

        Assert.Equal(130, server.Interrupt());

        Assert.Empty(SessionArchive.Sessions(folder["archive"]));
    }

    [Fact]
    public async Task BytesThatNoLayoutFitsAreSaid()
    {
        PulledCable.SkipWhereLacking();
        using var cable = new PulledCable();
        using var reader = Read(cable, "hut-text");
        reader.WaitUntilSaid("waiting for the instrument's first byte");

        using var ended = new CancellationTokenSource();
        var garbling = GarbleAsync(cable.Instrument, ended.Token);
        reader.WaitUntilSaid("no frame of the layout is among them");
        await ended.CancelAsync();
        await garbling;

        Assert.Equal(130, reader.Interrupt());
    }

    [Fact]
    public void SilenceIsSaidAndADeviceThatStaysAwayEndsTheSession()
    {
        PulledCable.SkipWhereLacking();
        using var folder = new TemporaryFolder();
        using var cable = new PulledCable();
        using var reader = Read(cable, "hut-text", "--archive", folder["archive"], "--give-up-after", "3.5");
        reader.WaitUntilSaid("waiting for the instrument's first byte");
        using var player = new LiveProgram("simulate", "--to", cable.Instrument, "--layout", LiveProgram.Layout("hut-text"), "--seconds", "3");

        Assert.Equal(3, reader.ExitStatus());

        Assert.Contains(reader.Error, line => line.Contains("nothing has come for 2 s", StringComparison.Ordinal));
        Assert.EndsWith("Check the cable and run again.", reader.Error[^1], StringComparison.Ordinal);
        Assert.Equal(150, reader.End.GetProperty("samples").GetInt64());
        ArchivedSession.Open(Assert.Single(SessionArchive.Sessions(folder["archive"]))).Verify();
    }

    [Fact]
    public void APulledCableIsSaidWithinTwoSeconds()
    {
        PulledCable.SkipWhereLacking();
        using var cable = new PulledCable();
        using var reader = Read(cable, "hut-text", "--give-up-after", "60");
        reader.WaitUntilSaid("waiting for the instrument's first byte");
        cable.Pull();
        var pulled = System.Diagnostics.Stopwatch.StartNew();

        reader.WaitUntilSaid("the cable is out");

        Assert.True(pulled.Elapsed < TimeSpan.FromSeconds(2), $"{pulled.Elapsed}");
        Assert.Equal(130, reader.Interrupt());
        Assert.Equal(0, reader.End.GetProperty("samples").GetInt64());
        cable.Plug();
    }

    private static LiveProgram Read(PulledCable cable, string layout, params string[] more) =>
        new(["read", cable.Reader, "--layout", LiveProgram.Layout(layout), "--format", "ndjson", "--beats", .. more]);

    private static LiveProgram Play(PulledCable cable, int seconds) =>
        new("simulate", "--to", cable.Instrument, "--layout", LiveProgram.Layout("hut-binary"), "--seconds", $"{seconds}", "--seed", "7");

    // The reader was there first, so its sample 0 is the first that was sent.
    private static void IsWhatWasSent(ArchivedSession session)
    {
        using var recording = session.OpenRecording();
        var got = recording.Blocks(CancellationToken.None).ToEnumerable().ToList();
        var end = got[^1].EndIndex;
        var sent = new SimulatedRecording(new Scenario { DurationSeconds = 3600, RateHz = LayoutHz, Seed = 7 }).Blocks(1000)
            .TakeWhile(block => block.FirstIndex < end).SelectMany(block => block.Samples.ToArray()).ToArray();
        foreach (var block in got)
        {
            Assert.Equal(sent.AsSpan((int)block.FirstIndex, block.Samples.Length).ToArray(), block.Samples.ToArray());
        }

        Assert.Equal(end, session.Counts.Samples + session.Counts.Missing);
    }

    // What an instrument looks like at another baud rate.
    private static async Task GarbleAsync(string port, CancellationToken ended)
    {
        await using var line = new FileStream(port, FileMode.Open, FileAccess.Write, FileShare.ReadWrite, bufferSize: 0);
        var chance = new Random(1);
        var bytes = new byte[32];
        while (!ended.IsCancellationRequested)
        {
            chance.NextBytes(bytes);
            line.Write(bytes);
            await Task.Delay(200, CancellationToken.None);
        }
    }
}
