using PulseStream.Archive;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Archive;

public sealed class ArchiveBySqlTests
{
    [Fact]
    public void OneQueryReadsTheWholeArchiveWithPersonDateAndSessionAsColumns()
    {
        using var archive = new TemporaryArchive();
        Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 300)]);
        Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 500)], Sessions.Header(start: Sessions.Start.AddDays(1)), new("morning", "hut-08"));

        var rows = Sql.Rows($"SELECT person, strftime(date, '%Y-%m-%d'), session, count(*), sum(red)::DOUBLE, max(sample) FROM read_parquet('{archive.Folder}/*/*/*/samples.parquet', hive_partitioning = true) GROUP BY ALL ORDER BY person");

        Assert.Equal(["hut-07", "2026-03-01", "night", 300L, Sum(300), 299L], rows[0].Select(c => c.Value));
        Assert.Equal(["hut-08", "2026-03-02", "morning", 500L, Sum(500), 499L], rows[1].Select(c => c.Value));
    }

    [Fact]
    public void SessionsWithoutPersonAndStartLieUnderUnassignedAndUndatedAndHaveNoTime()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 10)], Sessions.Header(), new("night"));

        Assert.Equal(Path.Combine(archive.Folder, "person=unassigned", "date=undated", "session=night"), folder);
        Assert.DoesNotContain(Sql.Rows($"DESCRIBE SELECT * FROM '{folder}/seconds.parquet'"), row => Equals(row[0].Value, "time_utc"));
    }

    [Theory]
    [InlineData("samples", "sample:BIGINT red:INTEGER infrared:INTEGER")]
    [InlineData("seconds", "second:BIGINT usable:BOOLEAN spo2:DOUBLE spo2Low:DOUBLE spo2High:DOUBLE pulse:DOUBLE perfusion:DOUBLE reasons:VARCHAR version:VARCHAR curveHash:VARCHAR time_utc:TIMESTAMP WITH TIME ZONE")]
    [InlineData("beats", "time:DOUBLE interval:DOUBLE ratio:DOUBLE quality:DOUBLE perfusion:DOUBLE time_utc:TIMESTAMP WITH TIME ZONE")]
    [InlineData("readings", "second:BIGINT spo2:BIGINT spo2Low:DOUBLE spo2High:DOUBLE pulse:BIGINT perfusion:DOUBLE heldSeconds:BIGINT spo2Unrounded:DOUBLE reasons:VARCHAR version:VARCHAR curveHash:VARCHAR time_utc:TIMESTAMP WITH TIME ZONE")]
    [InlineData("sittings", "from:BIGINT to:BIGINT outcome:VARCHAR spo2:BIGINT pulse:BIGINT readings:BIGINT reasons:VARCHAR spo2Lowest:BIGINT recordSecond:BIGINT lowestSecond:BIGINT version:VARCHAR curveHash:VARCHAR time_utc:TIMESTAMP WITH TIME ZONE")]
    [InlineData("advice", "second:BIGINT level:VARCHAR text:VARCHAR recheckAfterMinutes:BIGINT because:VARCHAR version:VARCHAR curveHash:VARCHAR time_utc:TIMESTAMP WITH TIME ZONE")]
    public void EveryFileHasItsColumns(string file, string columns)
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 10)]);

        var found = Sql.Rows($"DESCRIBE SELECT * FROM read_parquet('{folder}/{file}.parquet', hive_partitioning = false)").Select(row => $"{row[0].Value}:{row[1].Value}");

        Assert.Equal(columns, string.Join(' ', found));
    }

    [Theory]
    [InlineData("seconds")]
    [InlineData("readings")]
    [InlineData("sittings")]
    [InlineData("advice")]
    public void EveryRowOfResultsKnowsTheVersionAndTheCurveThatMadeIt(string file)
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 10)]);
        var settings = ArchivedSession.Open(folder).Settings;

        var row = Sql.Row($"SELECT version, curveHash FROM '{folder}/{file}.parquet' GROUP BY ALL");

        Assert.Equal([settings.Version, settings.CurveHash], row.Select(cell => cell.Value));
        Assert.Contains($"\"curveHash\": \"{settings.CurveHash}\"", File.ReadAllText(Path.Combine(folder, "session.json")), StringComparison.Ordinal);
    }

    [Fact]
    public void TheFileOfBeatsSaysItForThemAll()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 10)]);
        var settings = ArchivedSession.Open(folder).Settings;

        var told = Sql.Rows($"SELECT decode(value) FROM parquet_kv_metadata('{folder}/beats.parquet') WHERE decode(key) IN ('version', 'curveHash') ORDER BY decode(key)");

        Assert.Equal([settings.CurveHash, settings.Version], told.Select(row => row[0].Value));
    }

    [Fact]
    public void WhatIsNotKnownIsNullAndReasonsAreSplitBySql()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 10)]);

        var first = Sql.Row($"SELECT usable, spo2, pulse, perfusion, list_contains(string_split(reasons, ' '), 'motion') AS moved, epoch_us(time_utc) AS us FROM '{folder}/seconds.parquet' WHERE second = 0");
        var beat = Sql.Row($"SELECT interval, ratio, epoch_us(time_utc) FROM '{folder}/beats.parquet' WHERE time > 1.5");

        Assert.Equal([false, null, null, null, true, Sessions.Start.ToUnixTimeMilliseconds() * 1000], first.Select(c => c.Value));
        Assert.Equal([0.875, null, (Sessions.Start.ToUnixTimeMilliseconds() * 1000) + 1_875_000], beat.Select(c => c.Value));
    }

    [Fact]
    public void DecimalCountsArePlainDoublesAndAColumnIsWholeOnlyIfAllOfItIs()
    {
        using var archive = new TemporaryArchive();
        var folder = Sessions.Write(archive.Folder, [Sessions.WholeCounts(0, 20_000), new(20_000, new[] { Sample.OfLight(0.25, 7) })]);

        var types = Sql.Rows($"DESCRIBE SELECT red, infrared FROM '{folder}/samples.parquet'").Select(row => row[1].Value);

        Assert.Equal(["DOUBLE", "INTEGER"], types);
    }

    private static double Sum(int count) => Sessions.WholeCounts(0, count).Samples.ToArray().Sum(s => s.Red);
}
