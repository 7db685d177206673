using PulseStream.Archive;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class ArchiveRecoveryTests
{
    private static readonly string[] FilesInOrder =
        ["samples.parquet", "seconds.parquet", "beats.parquet", "readings.parquet", "sittings.parquet", "advice.parquet", "session.json"];

    [Fact]
    public void ALiveSessionThatWasCutOffLosesItsLastSecondAtMost()
    {
        using var archive = new TemporaryArchive();
        var received = Sessions.WholeCounts(0, 1234);
        string folder;
        using (var writer = Sessions.Begin(archive.Folder, pace: JournalPace.Live))
        {
            folder = writer.Folder;
            for (var i = 0; i < 1234; i += 17)
            {
                writer.Append(new SampleBlock(i, received.Samples.Slice(i, Math.Min(17, 1234 - i))));
            }
        }

        Recover(archive.Folder);

        var kept = Sessions.ReadBack(folder);
        Assert.InRange(kept.Count, 1234 - 100, 1234);
        Assert.Equal(Sessions.Indexed(received).Take(kept.Count), kept);
        Assert.True(ArchivedSession.Open(folder).IsRecovered);
        Assert.Null(ArchivedSession.Open(folder).Counts.RefusedRows);
    }

    // What a kill leaves is the database and its write-ahead log as they lie on the disk.
    [Fact]
    public void WhatWasFlushedSurvivesAKillAtThatMoment()
    {
        using var archive = new TemporaryArchive();
        using var killed = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(Sessions.WholeCounts(0, 250));
        Sessions.AppendResults(writer);
        writer.Flush();
        var folder = Copy(writer.Folder, killed.Folder);

        Recover(killed.Folder);

        Assert.Equal(250, Sessions.ReadBack(folder).Count);
        Assert.Equal(Sessions.SomeReadings, ArchivedSession.Open(folder).Readings());
    }

    // Power fails while the session writes: data base and log are copied together, as a disk would keep them at that instant.
    [Fact]
    public async Task PowerThatFailsAtAnyInstantCostsTheLastSecondAtMost()
    {
        const int trials = 40;
        const int hz = 100;
        var chance = new Random(20260118);
        using var archive = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder, pace: JournalPace.Live);
        var received = Sessions.WholeCounts(0, trials * hz);
        var (length, written) = (10, 0L);
        var writing = Task.Run(
            async () =>
            {
                for (var at = 0; at < trials * hz; at += length)
                {
                    writer.Append(new SampleBlock(at, received.Samples.Slice(at, length)));
                    Interlocked.Exchange(ref written, at + length);
                    await Task.Delay(1);
                }
            },
            TestContext.Current.CancellationToken);
        while (!writing.IsCompleted)
        {
            await Task.Delay(chance.Next(5, 60), TestContext.Current.CancellationToken);
            using var lost = new TemporaryArchive();
            var before = Interlocked.Read(ref written);
            var folder = Copy(writer.Folder, lost.Folder, "journal.db", "journal.db-wal");

            Recover(lost.Folder);

            var kept = Directory.Exists(folder) && SessionArchive.IsSession(folder) ? Sessions.ReadBack(folder) : [];
            Assert.True(kept.Count >= before - hz, $"{kept.Count} samples kept of {before}");
            Assert.Equal(Sessions.Indexed(received).Take(kept.Count), kept);
        }

        await writing;
    }

    [Fact]
    public void ALogThatACutLeftBehindItsJournalIsCleared()
    {
        using var archive = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(Sessions.WholeCounts(0, 100));
        writer.Seal(new(100, 0, 0, 0));
        var log = Path.Combine(writer.Folder, "journal.db-wal");
        Assert.False(File.Exists(log));
        File.WriteAllText(log, "left behind");

        Recover(archive.Folder);

        Assert.False(File.Exists(log));
        Assert.Equal(100, ArchivedSession.Open(writer.Folder).Counts.Samples);
    }

    [Fact]
    public void GapsOfASessionThatWasCutOffCountAsMissing()
    {
        using var archive = new TemporaryArchive();
        using (var writer = Sessions.Begin(archive.Folder))
        {
            writer.Append(Sessions.WholeCounts(10, 100));
            writer.Append(Sessions.WholeCounts(150, 100));
            writer.Flush();
        }

        Recover(archive.Folder);

        Assert.Equal(50, ArchivedSession.Open(SessionArchive.Sessions(archive.Folder).Single()).Counts.Missing);
    }

    [Fact]
    public void ACutAtAnyStepOfSealingIsCompletedAndDoingItTwiceIsDoingItOnce()
    {
        using var archive = new TemporaryArchive();
        using var cut = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(Sessions.WholeCounts(0, 3000));
        Sessions.AppendResults(writer);
        writer.Flush();
        Copy(writer.Folder, cut.Folder);
        writer.Seal(new(3000, 0, 0, 0));

        for (var done = 0; done <= FilesInOrder.Length; done++)
        {
            foreach (var share in new[] { 0, 0.5, 1 })
            {
                using var trial = new TemporaryArchive();
                var folder = Copy(SessionFolder(cut.Folder), trial.Folder);
                LeaveBehind(writer.Folder, folder, done, share);

                Recover(trial.Folder);

                Assert.Equal(FilesInOrder.Order(StringComparer.Ordinal), Directory.EnumerateFiles(folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal), StringComparer.Ordinal);
                Assert.Equal(3000, Sessions.ReadBack(folder).Count);
                Assert.Equal(Sessions.SomeSeconds, ArchivedSession.Open(folder).Seconds());
                Assert.Empty(Recover(trial.Folder));
            }
        }
    }

    [Fact]
    public void ACutWhileSealingKeepsTheCounts()
    {
        using var archive = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(Sessions.WholeCounts(0, 300));

        // A folder in the way of the last file stops the sealing there.
        var obstacle = Directory.CreateDirectory(Path.Combine(writer.Folder, "session.json.part"));
        Assert.Throws<BadInputException>(() => writer.Seal(new(300, 5, 4, 3)));
        writer.Dispose();
        obstacle.Delete();
        Assert.Empty(SessionArchive.Sessions(archive.Folder));

        Recover(archive.Folder);

        Assert.Equal(new SessionCounts(300, 5, 4, 3, 0, 0, 0), ArchivedSession.Open(writer.Folder).Counts);
        Assert.False(ArchivedSession.Open(writer.Folder).IsRecovered);
    }

    [Fact]
    public void ASessionThatStillRunsIsLeftAlone()
    {
        using var archive = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder, pace: JournalPace.Live);
        writer.Append(Sessions.WholeCounts(0, 300));

        Assert.Empty(Recover(archive.Folder));

        writer.Append(Sessions.WholeCounts(300, 300));
        writer.Seal(new(600, 0, 0, 0));
        Assert.Equal(600, Sessions.ReadBack(writer.Folder).Count);
    }

    [Fact]
    public void AJournalThatCannotBeReadIsASentenceAndStopsNoOther()
    {
        using var archive = new TemporaryArchive();
        Sessions.Begin(archive.Folder, identity: new("a")).Dispose();
        Sessions.Begin(archive.Folder, identity: new("b")).Dispose();
        var first = Directory.EnumerateFiles(archive.Folder, "journal.db", SearchOption.AllDirectories).Order(StringComparer.Ordinal).First();
        var noise = new byte[5000];
        new Random(5).NextBytes(noise);
        File.WriteAllBytes(first, noise);
        File.WriteAllBytes(first + "-wal", noise);

        var said = Recover(archive.Folder);

        Assert.Contains(said, s => s.Contains("journal.db", StringComparison.Ordinal));
        Assert.EndsWith("session=b", Assert.Single(SessionArchive.Sessions(archive.Folder)), StringComparison.Ordinal);
        Assert.True(File.Exists(first));
    }

    [Fact]
    public void AFlippedBitOfAJournalNeverEndsInAStackTrace()
    {
        using var archive = new TemporaryArchive();
        using (var writer = Sessions.Begin(archive.Folder))
        {
            writer.Append(Sessions.WholeCounts(0, 300));
            Sessions.AppendResults(writer);
            writer.Flush();
        }

        var random = new Random(6);
        for (var i = 0; i < 120; i++)
        {
            using var trial = new TemporaryArchive();
            var path = Path.Combine(Copy(SessionFolder(archive.Folder), trial.Folder), i % 2 == 0 ? "journal.db" : "journal.db-wal");
            var bytes = File.ReadAllBytes(path);
            bytes[random.Next(bytes.Length)] ^= (byte)(1 << random.Next(8));
            File.WriteAllBytes(path, bytes);
            Recover(trial.Folder);
        }
    }

    [Fact]
    public void AJournalThatNeverBeganLeavesNothing()
    {
        using var archive = new TemporaryArchive();
        var folder = Directory.CreateDirectory(Path.Combine(archive.Folder, "person=unassigned", "date=undated", "session=x")).FullName;
        File.WriteAllBytes(Path.Combine(folder, "journal.db"), []);

        Assert.Empty(Recover(archive.Folder));

        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public void AnArchiveThatIsNotThereHasNothingToRecover() => Assert.Empty(Recover("/nowhere/at/all"));

    private static List<string> Recover(string archive)
    {
        var said = new List<string>();
        ArchiveRecovery.RecoverAll(archive, said.Add);
        return said;
    }

    private static string SessionFolder(string archive) =>
        Path.GetDirectoryName(Directory.EnumerateFiles(archive, "journal.db", SearchOption.AllDirectories).Single())!;

    private static string Copy(string folder, string archive, params string[] inOrder)
    {
        var target = Directory.CreateDirectory(Path.Combine(archive, "person=hut-07", "date=2026-03-01", "session=night")).FullName;
        foreach (var name in inOrder.Length > 0 ? inOrder : Directory.EnumerateFiles(folder).Select(Path.GetFileName))
        {
            File.Copy(Path.Combine(folder, name!), Path.Combine(target, name!));
        }

        return target;
    }

    private static void LeaveBehind(string sealedFolder, string folder, int done, double share)
    {
        foreach (var name in FilesInOrder.Take(done))
        {
            File.Copy(Path.Combine(sealedFolder, name), Path.Combine(folder, name));
        }

        if (done < FilesInOrder.Length)
        {
            var bytes = File.ReadAllBytes(Path.Combine(sealedFolder, FilesInOrder[done]));
            File.WriteAllBytes(Path.Combine(folder, FilesInOrder[done] + ".part"), bytes[..(int)(bytes.Length * share)]);
        }
    }
}
