using System.Text.Json;
using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class ArchivedSessionTests
{
    [Fact]
    public void ResultsComeBackAsTheyWereAppended()
    {
        using var archive = new TemporaryArchive();
        var session = ArchivedSession.Open(Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]));

        Assert.Equal(Sessions.SomeSeconds, session.Seconds());
        Assert.Equal(Sessions.SomeBeats, session.Beats());
        Assert.Equal(Sessions.SomeReadings, session.Readings());
        Assert.Equal([Sessions.SomeSitting], session.Sittings());
        Assert.Equal([Sessions.SomeAdvice], session.Advice());
        Assert.Equal(Sessions.Identity, session.Identity);
        Assert.Equal(new SessionCounts(300, 7, 2, 1, 3, 2, 2), session.Counts);
        Assert.False(session.IsRecovered);
    }

    [Fact]
    public void ASittingWithoutSaturationKeepsItsPulse()
    {
        using var archive = new TemporaryArchive();
        var sitting = new Sitting(3, 70, SittingOutcome.None, null, null, 66, 0, Reasons.Motion);
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(sitting);
        writer.Seal(SampleTally.Empty);

        Assert.Equal([sitting], ArchivedSession.Open(writer.Folder).Sittings());
    }

    // The reading of record is the one held once the sitting is long enough; it was accepted before.
    [Fact]
    public void AReadingOfRecordThatWasHeldForLongerComesBack()
    {
        using var archive = new TemporaryArchive();
        var (first, second) = (Sessions.SomeReadings[0], Sessions.SomeReadings[1]);
        var record = first with { SecondIndex = 45, PulseRatePerMinute = 73, HeldSeconds = 20 };
        var sitting = new Sitting(0, 90, SittingOutcome.Accepted, record, second, null, 2, Reasons.None);
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(first);
        writer.Append(second);
        writer.Append(sitting);
        writer.Seal(SampleTally.Empty);

        var session = ArchivedSession.Open(writer.Folder);
        Assert.Equal([sitting], session.Sittings());
        Assert.Equal([sitting], session.Outline().Sittings);
    }

    [Fact]
    public void ARateOfArrivalIsKeptAndTheLayoutsRateStaysTheSessions()
    {
        using var archive = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(Sessions.WholeCounts(0, 300));
        writer.Seal(SampleTally.Empty with { Samples = 300, ArrivalRateHz = 100.8 });

        var kept = JsonElement.Parse(File.ReadAllBytes(Path.Combine(writer.Folder, "session.json")));
        Assert.Equal(100.8, kept.GetProperty("arrivalRateHz").GetDouble());
        Assert.Equal(100, ArchivedSession.Open(writer.Folder).Header.Rate.Hz);
    }

    [Fact]
    public void TheDescriptionSaysWhatIsKnown()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);

        var json = JsonDocument.Parse(File.ReadAllText(Path.Combine(folder, "session.json"))).RootElement;

        Assert.Equal("night.csv", json.GetProperty("source").GetString());
        Assert.Equal(100, json.GetProperty("sampleRateHz").GetDouble());
        Assert.Equal(["red", "infrared"], json.GetProperty("columns").EnumerateArray().Select(c => c.GetString()!), StringComparer.Ordinal);
        Assert.Equal("textbook-line", json.GetProperty("curve").GetString());
        Assert.Equal(-25, json.GetProperty("curveSettings").GetProperty("coefficients")[1].GetInt32());
        Assert.Equal("adults-at-home", json.GetProperty("policy").GetString());
        Assert.Equal("0.1.0", json.GetProperty("version").GetString());
        Assert.Equal("hut-07", json.GetProperty("person").GetString());
        Assert.Equal("clip-3", json.GetProperty("sensor").GetString());
        Assert.Equal("index-left", json.GetProperty("site").GetString());
        Assert.Equal("2026-03-01T23:30:00+01:00", json.GetProperty("start").GetString());
        Assert.Equal(300, json.GetProperty("counts").GetProperty("samples").GetInt64());
    }

    [Fact]
    public void ASealedFolderHoldsItsFilesAndNothingElse()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);

        Assert.Equal(
            ["advice.parquet", "beats.parquet", "readings.parquet", "samples.parquet", "seconds.parquet", "session.json", "sittings.parquet"],
            Directory.EnumerateFileSystemEntries(folder).Select(Path.GetFileName).Order(StringComparer.Ordinal)!, StringComparer.Ordinal);
    }

    [Fact]
    public void TheSameRecordingAgainReplacesNothing()
    {
        using var archive = new TemporaryArchive();
        Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);
        Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);
        using var running = Sessions.Begin(archive.Folder);

        Assert.Equal(["session=night", "session=night-2"], SessionArchive.Sessions(archive.Folder).Select(f => Path.GetFileName(f)), StringComparer.Ordinal);
        Assert.EndsWith("session=night-3", running.Folder, StringComparison.Ordinal);
    }

    [Fact]
    public void ASuffixFitsBehindTheLongestName()
    {
        using var archive = new TemporaryArchive();
        var identity = new SessionIdentity(new string('a', 64));
        Sessions.Write(archive.Folder, [], identity: identity);

        var second = ArchivedSession.Open(Sessions.Write(archive.Folder, [], identity: identity));

        Assert.Equal(new string('a', 62) + "-2", second.Identity.Session);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Anna Muster")]
    [InlineData("../x")]
    [InlineData("a/b")]
    [InlineData("a\n")]
    [InlineData("zoë")]
    [InlineData("01234567890123456789012345678901234567890123456789012345678901234")]
    public void WhatIsNoPseudonymIsRefused(string word)
    {
        Assert.Throws<BadInputException>(() => new SessionIdentity("night", word));
        Assert.Throws<BadInputException>(() => new SessionIdentity(word));
        Assert.Throws<BadInputException>(() => PersonHistory.Before("nowhere", word, Sessions.Start, 60, _ => { }));
    }

    [Theory]
    [InlineData("night.csv", "night")]
    [InlineData("/media/Hut 7/a night!.csv", "a-night")]
    [InlineData("-", "recording")]
    public void ASessionNameComesFromTheSource(string source, string name)
    {
        var header = Sessions.Header() with { Source = source };

        Assert.Equal(name, SessionIdentity.SessionNameOf(header));
        Assert.Equal(name + "-20260301T223000Z", SessionIdentity.SessionNameOf(header with { Start = Sessions.Start }));
    }

    [Fact]
    public void AnArchiveThatCannotBeWrittenIsOneSentence()
    {
        using var archive = new TemporaryArchive();
        var file = Path.Combine(archive.Folder, "file");
        File.WriteAllText(file, "no folder");

        Assert.Throws<BadInputException>(() => SessionArchive.EnsureWritable(file));
        Assert.Throws<BadInputException>(() => Sessions.Begin(file));
    }

    [Fact]
    public void SamplesThatGoBackAreABug()
    {
        using var archive = new TemporaryArchive();
        using var writer = Sessions.Begin(archive.Folder);
        writer.Append(Sessions.WholeCounts(0, 10));

        Assert.Throws<ArgumentOutOfRangeException>(() => writer.Append(Sessions.WholeCounts(9, 10)));
    }

    [Fact]
    public void ALongSessionIsWrittenInRowGroupsAndPlayedInBlocksOfASecond()
    {
        // Writer and reader hold one row group: that is what keeps the memory of a long session constant.
        const int MostRowsInMemory = 60_000;
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [.. Enumerable.Range(0, 36).Select(i => Sessions.WholeCounts(i * 10_000L, 10_000, i))]);

        var largest = Sql.Row($"SELECT max(row_group_num_rows), count(DISTINCT row_group_id) FROM parquet_metadata('{folder}/samples.parquet')");
        using var recording = ArchivedRecording.Open(folder);
        var longest = 0;
        recording.Blocks(CancellationToken.None).Subscribe(block => longest = Math.Max(longest, block.Samples.Length));

        Assert.True((long)largest[0].Value! <= MostRowsInMemory);
        Assert.True((long)largest[1].Value! >= 6);
        Assert.Equal(100, longest);
    }
}
