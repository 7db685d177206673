using System.Text;
using PulseStream.Archive;
using PulseStream.Cli;
using PulseStream.Cli.Commands;
using PulseStream.Comparison;
using PulseStream.Triage;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class InterruptedReplayTests
{
    private static readonly string[] Nights = ["low-84.csv", "warm-finger.csv", "fidgeting-hand.csv", "slow-fall.csv"];

    [Fact]
    public void WhatWasFinishedIsNotReplayedAgainAndTheResultIsTheSame()
    {
        using var folder = new TemporaryFolder();
        var paths = Recorded(folder);
        var whole = Run(folder, paths, _ => { }, CancellationToken.None);
        var finished = Interrupt(folder, paths);

        // Only a recording that is replayed again can fail now.
        foreach (var path in finished)
        {
            File.Delete(Path.Combine(path, "samples.parquet"));
        }

        var said = new List<string>();
        var resumed = Run(folder, paths, said.Add, CancellationToken.None);

        Assert.InRange(finished.Count, 1, paths.Count - 1);
        Assert.Equal(TextOf(whole), TextOf(resumed), StringComparer.Ordinal);
        Assert.StartsWith($"{finished.Count} of {paths.Count} recordings were replayed before", said[0], StringComparison.Ordinal);
        Assert.Empty(UnfinishedReplay.All(folder.Path));
    }

    [Fact]
    public void ALineThatWasCutOffIsReplayedAgain()
    {
        using var folder = new TemporaryFolder();
        var paths = Recorded(folder);
        var whole = Run(folder, paths, _ => { }, CancellationToken.None);
        Interrupt(folder, paths);
        var notes = Assert.Single(UnfinishedReplay.All(folder.Path));
        File.WriteAllText(notes, File.ReadAllLines(notes)[0] + "\nno line\n{\"Path\":\"" + paths[^1], new UTF8Encoding(false));

        var resumed = Run(folder, paths, _ => { }, CancellationToken.None);

        Assert.Equal(TextOf(whole), TextOf(resumed), StringComparer.Ordinal);
    }

    [Fact]
    public void AnotherSessionInTheArchiveBeginsTheReplayAnew()
    {
        using var folder = new TemporaryFolder();
        var paths = Recorded(folder);
        Interrupt(folder, paths);
        ProgramRun.Of("replay", Recordings.PathOf("finger-slips.csv"), "--archive", folder.Path, "--quiet");

        var said = new List<string>();
        Run(folder, SessionArchive.Sessions(folder.Path), said.Add, CancellationToken.None);

        Assert.DoesNotContain(said, line => line.Contains("before an interruption", StringComparison.Ordinal));
        Assert.Single(UnfinishedReplay.All(folder.Path));
    }

    [Fact]
    public void NotesOfOtherBuildsAreClearedAndAForgottenPersonIsInNone()
    {
        using var folder = new TemporaryFolder();
        var paths = Recorded(folder);
        File.WriteAllText(UnfinishedReplay.PathOf(folder.Path, "other", "0"), "");
        Interrupt(folder, paths);

        Assert.Single(UnfinishedReplay.All(folder.Path));
        Assert.Equal(0, ProgramRun.Of("forget", "unassigned", "--archive", folder.Path).Status);
        Assert.Empty(Directory.GetFileSystemEntries(folder.Path));
    }

    private static IReadOnlyList<string> Recorded(TemporaryFolder folder)
    {
        ProgramRun.Of(["replay", .. Nights.Select(Recordings.PathOf), "--archive", folder.Path, "--quiet"]);
        return SessionArchive.Sessions(folder.Path);
    }

    /// <summary>Cancels a replay once it has told that a recording is done.</summary>
    /// <returns>The recordings that it has finished.</returns>
    private static IReadOnlyList<string> Interrupt(TemporaryFolder folder, IReadOnlyList<string> paths)
    {
        using var stop = new CancellationTokenSource();
        Assert.ThrowsAny<OperationCanceledException>(() => Run(folder, paths, _ => stop.Cancel(), stop.Token));
        var notes = UnfinishedReplay.All(folder.Path).Single(path => new FileInfo(path).Length > 0);
        return [.. paths.Where(path => File.ReadAllText(notes).Contains(path, StringComparison.Ordinal))];
    }

    private static IReadOnlyList<RecordingResults> Run(TemporaryFolder folder, IReadOnlyList<string> paths, Action<string> say, CancellationToken cancel)
    {
        var order = new SessionOrder(folder.Path, null, null, null, null, null, used => new Circumstances { DeviceArmsPercent = used.ArmsPercent }, [], say);
        return new BaselineRun(order, new Surroundings(Stream.Null, Stream.Null, TextWriter.Null, new HurryingClock()), cancel)
            .Run<IReadOnlyList<RecordingResults>>(paths, listed => [.. listed.AsParallel().AsOrdered().WithCancellation(cancel).Select(one => one.Read())]);
    }

    private static string TextOf(IReadOnlyList<RecordingResults> results) => string.Join('\n', results.Select(one =>
        $"{one.Session} {one.Seconds} {one.UsableSeconds} {one.JudgedBy} {one.Problem} {string.Join(' ', one.Readings)} {string.Join(' ', one.Advice)} {string.Join(' ', one.Sittings)}"));

    /// <summary>A clock that is two seconds further whenever it is asked, so that progress is told after every recording.</summary>
    private sealed class HurryingClock : TimeProvider
    {
        private long _seconds;

        public override long TimestampFrequency => 1;

        public override long GetTimestamp() => Interlocked.Add(ref _seconds, 2);
    }
}
