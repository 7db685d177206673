using System.Globalization;
using System.Text.Json;
using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using Xunit;
using Invented = PulseStream.Tests.Archive.Sessions;

namespace PulseStream.Tests.Cli;

public sealed class TrendCommandTests
{
    private static readonly DateTimeOffset Start = DateTimeOffset.Parse("2026-02-10T07:00:00+01:00", CultureInfo.InvariantCulture);

    [Fact]
    public void AFallOverDaysIsTold()
    {
        using var folder = new TemporaryFolder();
        Write(folder.Path, days: 14, day => day < 8 ? 97 : day < 10 ? 97 - (1.5 * (day - 8)) : 94);

        var run = ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07", "--format", "ndjson", "--altitude", "1500");

        Assert.Equal((0, ""), (run.Status, run.Error));
        var course = Assert.Single(run.Objects("course"));
        Assert.Equal(("hut-07", 94, 14, 42), (course.GetProperty("person").GetString(), Whole(course, "last"), Whole(course, "days"), Whole(course, "readings")));
        Assert.Equal(97, Number(course, "baseline"), 0.3);
        Assert.Equal(Number(course, "baseline") - 94, Number(course, "drop"), 0.001);
        Assert.True(Number(course, "baselineLow") <= Number(course, "baseline") && Number(course, "baseline") <= Number(course, "baselineHigh"));
        Assert.True(Number(course, "expectedLow") < Number(course, "expectedHigh"));
        var change = Assert.Single(run.Objects("change"));
        Assert.Equal(-3, Number(change, "size"), 0.3);
        Assert.Equal(0, (change.GetProperty("from").GetDateTimeOffset() - Start.AddDays(8)).TotalHours, 12.0);
    }

    [Fact]
    public void TheSheetTellsWhoWhatIsUsualAndWhatChanged()
    {
        using var folder = new TemporaryFolder();
        Write(folder.Path, days: 14, day => day < 8 ? 97 : 94, recheckMinutes: 60);

        Assert.Equal(0, ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07", "--sheet", folder["sheet.html"]).Status);

        var page = File.ReadAllText(folder["sheet.html"]);
        Assert.Contains("Oxygen saturation of hut-07", page, StringComparison.Ordinal);
        Assert.Contains("Fall of 3.0 points", page, StringComparison.Ordinal);
        Assert.Contains("<svg", page, StringComparison.Ordinal);
        Assert.Equal(42, page.Split("<circle ").Length - 1);
        Assert.DoesNotContain("http", page.Replace("http-equiv", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("breathless", "Feeling breathless at rest, at the last advice")]
    [InlineData("severe", "Feeling severe, at the last advice")]
    [InlineData("poorly", "Feeling poorly, at the last advice")]
    [InlineData("well", "Feeling well, at the last advice")]
    [InlineData(null, "Not asked at the last advice")]
    public void TheSheetTellsHowThePersonFelt(string? feeling, string told)
    {
        using var folder = new TemporaryFolder();
        string[] asked = feeling is null ? [] : ["--feeling", feeling];
        ProgramRun.Of(["replay", Recordings.WarmFinger, "--archive", folder.Path, "--person", "hut-07", "--start", "2026-02-10T07:00:00+01:00", "--quiet", .. asked]);

        Assert.Equal(0, ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07", "--sheet", folder["sheet.html"]).Status);

        Assert.Contains("Because: ", File.ReadAllText(folder["sheet.html"]), StringComparison.Ordinal);
        Assert.Contains(told, File.ReadAllText(folder["sheet.html"]), StringComparison.Ordinal);
    }

    [Fact]
    public void ADropThatRoundsToNothingHasNoSign()
    {
        using var folder = new TemporaryFolder();
        Write(folder.Path, days: 8, _ => 96.97);

        Assert.Contains("drop        0.0 points", ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ChecksThatWereAskedForAreDoneOrMissed()
    {
        using var folder = new TemporaryFolder();
        Write(folder.Path, days: 1, _ => 93, recheckMinutes: 60);

        var checks = ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07", "--format", "ndjson").Objects("recheck").ToList();

        Assert.Equal(3, checks.Count);
        Assert.Equal(Start.AddSeconds(60).AddMinutes(60), checks[0].GetProperty("due").GetDateTimeOffset());
        Assert.Equal(Start.AddHours(8).AddSeconds(20), checks[0].GetProperty("done").GetDateTimeOffset());
        Assert.Equal(JsonValueKind.Null, checks[2].GetProperty("done").ValueKind);
        Assert.Contains("MISSED: due 2026-02-11 00:01", ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void ACheckAfterExertionIsPairedWithTheOneAtRestAndKeptApart()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, "--archive", folder.Path, "--person", "hut-07", "--start", "2026-02-10T07:00:00+01:00", "--quiet");
        ProgramRun.Of("replay", Recordings.PathOf("low-84.csv"), "--archive", folder.Path, "--person", "hut-07", "--start", "2026-02-10T07:05:00+01:00", "--after-exertion", "--quiet");

        var run = ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07", "--format", "ndjson");

        var pair = Assert.Single(run.Objects("exertion"));
        Assert.Equal((97, 84, 13), (Whole(pair, "rest"), Whole(pair, "after"), Whole(pair, "drop")));
        Assert.Equal(97, Whole(Assert.Single(run.Objects("course")), "last"));
        Assert.Contains("FELL BY 13 POINTS", ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void WhatCannotBeToldIsOneSentence()
    {
        using var folder = new TemporaryFolder();

        ProgramRun.Of("trend", "--archive", folder["none"], "--person", "hut-07").IsRefused();
        ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07").IsRefused();
        ProgramRun.Of("trend", "--archive", folder.Path, "--person", "a b").IsRefused();
        ProgramRun.Of("trend", "--archive", folder.Path).IsRefused();
        Write(folder.Path, days: 1, _ => 96);
        ProgramRun.Of("trend", "--archive", folder.Path, "--person", "hut-07", "--altitude", "high").IsRefused();
    }

    // Three sittings a day, one reading each.
    private static void Write(string archive, int days, Func<double, double> level, int? recheckMinutes = null)
    {
        for (var i = 0; i < days * 3; i++)
        {
            var spo2 = level(i / 3.0);
            var header = Invented.Header(start: Start.AddHours(8 * i));
            using var writer = Invented.Begin(archive, header, new SessionIdentity($"check-{i:000}", "hut-07"));
            var reading = new Reading(20, (int)Math.Round(spo2), new Saturation(spo2, spo2 - 1, spo2 + 1), 70, 2, 5, Reasons.None);
            writer.Append(new SampleBlock(0, new[] { Sample.OfLight(1, 1) }));
            writer.Append(reading);
            writer.Append(new Sitting(0, 60, SittingOutcome.Accepted, reading, reading, null, 1, Reasons.None));
            writer.Append(new ArchivedAdvice(60, recheckMinutes is null ? "usual" : "recheck", "Measure again.", recheckMinutes, "band"));
            writer.Seal(new SampleTally(1, 0, 0, 0));
        }
    }

    private static double Number(JsonElement line, string name) => line.GetProperty(name).GetDouble();

    private static int Whole(JsonElement line, string name) => line.GetProperty(name).GetInt32();
}
