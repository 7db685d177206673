using System.Text.Json;
using PulseStream.Archive;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class CompareCommandTests
{
    // Reads every finger six points too high: alarms of the low finger are lost.
    private const string HighCurve = """{"name": "too-high", "coefficients": [116, -25], "from": 0.3, "to": 2.5}""";

    [Fact]
    public void ARunEqualsItselfAsArchiveAndAsLines()
    {
        using var folder = new TemporaryFolder();
        var lines = folder.Write("a.ndjson", ProgramRun.Of("replay", Low, Recordings.WarmFinger, "--format", "ndjson", "--archive", folder["archive"]).Output);

        var run = ProgramRun.Of("compare", folder["archive"], lines, "--format", "ndjson");

        Assert.Equal((0, ""), (run.Status, run.Error));
        Assert.All(run.Objects("recording"), row => Assert.Equal("same", row.GetProperty("verdict").GetString()));
        var total = Assert.Single(run.Objects("total"));
        Assert.Equal((2, 2, 0), (Whole(total, "recordings"), Whole(total, "same"), Whole(total, "lost")));
        Assert.Equal("total", JsonDocument.Parse(run.Lines[^1]).RootElement.GetProperty("kind").GetString());
    }

    [Fact]
    public void ALostAlarmComesFirstAndIsAFailureUnlessToldOtherwise()
    {
        using var folder = new TemporaryFolder();
        var a = folder.Write("a.ndjson", ProgramRun.Of("replay", Recordings.WarmFinger, Low, "--format", "ndjson").Output);
        var curve = folder.Write("curve.json", HighCurve);
        var b = folder.Write("b.ndjson", ProgramRun.Of("replay", Recordings.WarmFinger, Low, "--format", "ndjson", "--curve", curve).Output);

        var run = ProgramRun.Of("compare", a, b, "--format", "ndjson");

        var first = run.Objects("recording").First();
        Assert.Equal((1, "low-84.csv", "lost"), (run.Status, first.GetProperty("recording").GetString(), first.GetProperty("verdict").GetString()));
        Assert.Equal("emergency", first.GetProperty("adviceA").GetString());
        Assert.InRange(Whole(first, "largestMove"), 5, 7);
        Assert.Equal(0, ProgramRun.Of("compare", a, b, "--allow-lost").Status);
        Assert.Equal(1, ProgramRun.Of("compare", a, b, "--allow-lost", "--max-move", "2").Status);
        Assert.Contains("LOST  low-84.csv", ProgramRun.Of("compare", a, b).Output, StringComparison.Ordinal);
        Assert.Equal(0, ProgramRun.Of("compare", b, a, "--quiet").Status);
        Assert.Equal(1, ProgramRun.Of("compare", b, a, "--max-gained", "0").Status);
    }

    [Fact]
    public void ADamagedSessionIsListedAndTheOthersAreCompared()
    {
        using var folder = new TemporaryFolder();
        foreach (var archive in new[] { "a", "b" })
        {
            ProgramRun.Of("replay", Recordings.WarmFinger, Low, "--archive", folder[archive]);
        }

        var file = Directory.GetFiles(folder["b"], "readings.parquet", SearchOption.AllDirectories).Single(path => path.Contains("warm", StringComparison.Ordinal));
        File.WriteAllBytes(file, [1, 2, 3]);

        var run = ProgramRun.Of("compare", folder["a"], folder["b"], "--format", "ndjson");

        Assert.Equal(1, run.Status);
        Assert.Equal(2, run.Objects("recording").Count());
        Assert.Contains("readings.parquet", run.Objects("recording").Single(row => row.GetProperty("recording").GetString() == "warm-finger.csv").GetProperty("problem").GetString(), StringComparison.Ordinal);
        Assert.Single(run.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries));
    }

    [Fact]
    public void AnArchiveReplayedAgainIsTheSameAndUnderAnotherCurveItIsNot()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, Low, Recordings.PathOf("fidgeting-hand.csv"), "--archive", folder["a"]);
        var curve = folder.Write("curve.json", HighCurve);

        var same = ProgramRun.Of("compare", "--baseline", folder["a"], "--format", "ndjson");
        var other = ProgramRun.Of("compare", "--baseline", folder["a"], "--curve", curve, "--format", "ndjson");

        Assert.Equal(0, same.Status);
        Assert.All(same.Objects("recording"), row => Assert.Equal("same", row.GetProperty("verdict").GetString()));
        Assert.Equal(3, same.Objects("recording").Count());
        Assert.Equal((1, "lost"), (other.Status, other.Objects("recording").First().GetProperty("verdict").GetString()));
        Assert.Equal(other.Output, ProgramRun.Of("compare", "--baseline", folder["a"], "--curve", curve, "--format", "ndjson").Output);
        ProgramRun.Of("compare", "--baseline", folder["a"], folder["a"], folder["a"]).IsRefused();
    }

    [Fact]
    public void ThePageNeedsNothingElseAndBeginsWithTheLostAlarms()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Recordings.WarmFinger, Low, "--archive", folder["a"]);
        var curve = folder.Write("curve.json", HighCurve);

        var run = ProgramRun.Of("compare", "--baseline", folder["a"], "--curve", curve, "--page", folder["page.html"], "--figures", folder["figures"]);

        var page = File.ReadAllText(folder["page.html"]);
        Assert.Equal(1, run.Status);
        Assert.Equal(["compare.png", "compare.svg"], Directory.GetFiles(folder["figures"]).Select(Path.GetFileName).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        string[] inOrder = ["1 lost alarm", "<h2>Lost alarms</h2>", "low-84.csv", "less urgent", "<h2>Overall</h2>", "too-high (", "<h2>Gained alarms</h2>", "None.", "warm-finger.csv"];
        Assert.Equal(inOrder.Order(Comparer<string>.Create((x, y) => page.IndexOf(x, StringComparison.Ordinal).CompareTo(page.IndexOf(y, StringComparison.Ordinal)))), inOrder, StringComparer.Ordinal);
        Assert.All(inOrder, word => Assert.Contains(word, page, StringComparison.Ordinal));
        Assert.Contains("data:image/png;base64,", page, StringComparison.Ordinal);
        Assert.DoesNotContain("http", page, StringComparison.Ordinal);
    }

    [Fact]
    public void CurvesOfOneNameAreToldApart()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", Low, "--archive", folder["a"]);
        var curve = folder.Write("curve.json", HighCurve);
        ProgramRun.Of("replay", Low, "--archive", folder["b"], "--curve", curve);
        ProgramRun.Of("replay", Low, "--archive", folder["c"], "--curve", folder.Write("curve.json", HighCurve.Replace("116", "115.5", StringComparison.Ordinal)));

        string JudgedBy(string a, string b, string name) =>
            ProgramRun.Of("compare", folder[a], folder[b], "--format", "ndjson").Objects("recording").Single().GetProperty(name).GetString()!;

        Assert.StartsWith("curve too-high (", JudgedBy("b", "c", "judgedByA"), StringComparison.Ordinal);
        Assert.NotEqual(JudgedBy("b", "c", "judgedByA"), JudgedBy("b", "c", "judgedByB"), StringComparer.Ordinal);
        Assert.Equal(JudgedBy("a", "b", "judgedByA"), ProgramRun.Of("compare", "--baseline", folder["a"], "--format", "ndjson").Objects("recording").Single().GetProperty("judgedByB").GetString(), StringComparer.Ordinal);
    }

    [Fact]
    public void ADamagedSessionIsListedAndKeepsNoLaterOneOfThePersonFromBeingReplayed()
    {
        using var folder = new TemporaryFolder();
        string[] hut = ["--archive", folder["a"], "--person", "hut-07"];
        ProgramRun.Of(["replay", Low, .. hut, "--start", "2026-01-18T07:30:00+01:00"]);
        File.WriteAllText(Path.Combine(Assert.Single(SessionArchive.Sessions(folder["a"])), "session.json"), "{");
        var later = ProgramRun.Of(["replay", Recordings.WarmFinger, .. hut, "--start", "2026-01-18T08:30:00+01:00"]);

        var run = ProgramRun.Of("compare", "--baseline", folder["a"], "--format", "ndjson");

        Assert.Equal((0, 1), (later.Status, run.Status));
        Assert.Contains("Advice does not look back on this session.", later.Error, StringComparison.Ordinal);
        Assert.Equal(["moved", "same"], run.Objects("recording").Select(row => row.GetProperty("verdict").GetString()), StringComparer.Ordinal);
        Assert.Equal(1, Whole(run.Objects("total").Single(), "unreadable"));
    }

    [Fact]
    public void PrintedResultsTellTheSameHashesAsAnArchive()
    {
        using var folder = new TemporaryFolder();
        string Printed(string name, string curve) =>
            folder.Write(name, ProgramRun.Of("replay", Low, "--archive", folder[$"of-{name}"], "--format", "ndjson", "--curve", folder.Write("curve.json", curve)).Output);
        var (a, b) = (Printed("a.ndjson", HighCurve), Printed("b.ndjson", HighCurve.Replace("116", "115.5", StringComparison.Ordinal)));

        var row = ProgramRun.Of("compare", a, b, "--format", "ndjson").Objects("recording").Single();
        var archived = ProgramRun.Of("compare", folder["of-a.ndjson"], folder["of-b.ndjson"], "--format", "ndjson").Objects("recording").Single();

        Assert.NotEqual(row.GetProperty("judgedByA").GetString(), row.GetProperty("judgedByB").GetString(), StringComparer.Ordinal);
        Assert.Equal(archived.GetProperty("judgedByA").GetString(), row.GetProperty("judgedByA").GetString(), StringComparer.Ordinal);
        Assert.Equal(archived.GetProperty("judgedByB").GetString(), row.GetProperty("judgedByB").GetString(), StringComparer.Ordinal);
    }

    [Fact]
    public void WhatIsNoRunIsOneSentence()
    {
        using var folder = new TemporaryFolder();
        var results = folder.Write("a.ndjson", "{\"kind\":\"session\",\"source\":\"a.csv\"}\n");

        ProgramRun.Of("compare", results, folder["none.ndjson"]).IsRefused();
        ProgramRun.Of("compare", results, Recordings.WarmFinger).IsRefused();
        ProgramRun.Of("compare", results, folder.Write("empty.ndjson", "")).IsRefused();
        ProgramRun.Of("compare", results, results, "--max-move", "much").IsRefused();
        ProgramRun.Of("compare", results).IsRefused();
        Assert.Equal(0, ProgramRun.Of("compare", results, results).Status);
    }

    private static string Low => Recordings.PathOf("low-84.csv");

    private static int Whole(JsonElement line, string name) => line.GetProperty(name).GetInt32();
}
