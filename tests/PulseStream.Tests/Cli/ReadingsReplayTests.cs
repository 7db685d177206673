using System.Globalization;
using System.Text;
using System.Text.Json;
using PulseStream.Archive;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class ReadingsReplayTests
{
    private const string Start = "2026-01-18T07:30:00+01:00";

    // 91 % for half a minute after ten seconds without a finger.
    private static string Low { get; } = "time_s,spo2,pulse\n" + string.Concat(Enumerable.Range(0, 41).Select(second => second < 10 ? $"{second},,\n" : $"{second},91,88\n"));

    [Fact]
    public void AHeldValueIsAReadingWithAdviceAndWithoutAnInterval()
    {
        using var folder = new TemporaryFolder();

        var run = ProgramRun.Of("replay", folder.Write("hut.csv", Low), "--readings", "--format", "ndjson");

        var reading = Assert.Single(run.Objects("reading"));
        Assert.Equal((0, "", 14, 91, 88, 5), (run.Status, run.Error, Whole(reading, "second"), Whole(reading, "spo2"), Whole(reading, "pulse"), Whole(reading, "heldSeconds")));
        Assert.Equal((JsonValueKind.Null, JsonValueKind.Null), (reading.GetProperty("spo2Low").ValueKind, reading.GetProperty("spo2High").ValueKind));
        Assert.Contains(run.Objects("advice"), advice => advice.GetProperty("level").GetString() != "usual");
        var session = Assert.Single(run.Objects("session"));
        Assert.Equal((JsonValueKind.Null, 0, "instrument"), (session.GetProperty("sampleRateHz").ValueKind, session.GetProperty("columns").GetArrayLength(), session.GetProperty("curve").GetString()));
        Assert.Equal((0, 41, 31), (Whole(run.Objects("end").Single(), "samples"), Whole(run.Objects("end").Single(), "seconds"), Whole(run.Objects("end").Single(), "usableSeconds")));
        Assert.Contains("91 % (interval not told)", ProgramRun.Of("replay", folder["hut.csv"], "--readings").Output, StringComparison.Ordinal);
    }

    [Fact]
    public void TheAccuracyOfTheInstrumentIsTheWholeInterval()
    {
        using var folder = new TemporaryFolder();
        var curve = folder.Write("curve.json", """{"name": "hut", "coefficients": [110, -25], "from": 0.4, "to": 2.4, "arms": 2}""");

        var run = ProgramRun.Of("replay", folder.Write("hut.csv", Low), "--readings", "--curve", curve, "--format", "ndjson");

        // 91 ± 1.96 · 2.
        Assert.Contains(run.Objects("advice"), advice => advice.GetProperty("because").EnumerateArray().Any(why => why.GetString()!.Contains("Interval 87 to 94.9 %", StringComparison.Ordinal)));
    }

    [Fact]
    public void FramesOfTheBluetoothServiceAreDecodedAndTheirDoubtsAreReasons()
    {
        using var folder = new TemporaryFolder();
        var lines = new StringBuilder("time_s,frame\n");
        for (var second = 0; second < 40; second++)
        {
            var frame = second < 5 ? "0C FF 07 FF 07 00 20 00 08 00" : second is >= 20 and < 25 ? "0C 63 00 48 00 00 40 40 00 00" : "1C 5C 00 58 00 80 01 20 00 00 19 F0";
            lines.Append(CultureInfo.InvariantCulture, $"{second},{frame}\n");
        }

        var run = ProgramRun.Of("replay", folder.Write("frames.csv", lines.ToString()), "--readings", "--format", "ndjson");

        string ReasonsOf(int second) => string.Join(' ', run.Objects("second").ElementAt(second).GetProperty("reasons").EnumerateArray().Select(reason => reason.GetString()));
        Assert.Equal(("no-finger", "low-perfusion", "motion"), (ReasonsOf(2), ReasonsOf(10), ReasonsOf(22)));
        Assert.Equal([92, 92], run.Objects("reading").Select(reading => Whole(reading, "spo2")));
        Assert.Equal(2.5, run.Objects("reading").First().GetProperty("perfusion").GetDouble());
    }

    [Fact]
    public void ASpotCheckIsASittingOfItsOwn()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("spots.csv", "time_s,spot_check\n0,03 C5 F3 3C 00 E8 07 03 05 0E 07 09 00 01\n600,00 FF 07 FF 07\n1200,00 58 00 5A 00\n");

        var run = ProgramRun.Of("replay", file, "--readings", "--archive", folder["archive"], "--person", "hut-07", "--start", Start, "--format", "ndjson");

        Assert.Equal((0, ""), (run.Status, run.Error));
        Assert.Equal([(4, 97, 60), (1204, 88, 90)], run.Objects("reading").Select(reading => (Whole(reading, "second"), Whole(reading, "spo2"), Whole(reading, "pulse"))));
        Assert.Equal(["accepted", "accepted"], run.Objects("sitting").Select(sitting => sitting.GetProperty("outcome").GetString()), StringComparer.Ordinal);
        Assert.Equal(1260, Whole(run.Objects("end").Single(), "seconds"));
        Assert.Equal(88, ProgramRun.Of("trend", "--archive", folder["archive"], "--person", "hut-07", "--format", "ndjson").Objects("course").Single().GetProperty("last").GetDouble());
    }

    [Fact]
    public void NothingShownIsNeverAValue()
    {
        using var folder = new TemporaryFolder();
        var run = ProgramRun.Of("replay", folder.Write("hut.csv", "time_s,spo2,pulse\n" + string.Concat(Enumerable.Range(0, 30).Select(second => $"{second},0,0\n"))), "--readings", "--format", "ndjson");

        Assert.Empty(run.Objects("reading"));
        Assert.All(run.Objects("second"), second => Assert.Equal("missing-samples", second.GetProperty("reasons")[0].GetString()));
    }

    [Fact]
    public void TheyReachArchiveTrendReportAndAReplayOfTheArchive()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("hut.csv", Low);
        var first = ProgramRun.Of("replay", file, "--readings", "--archive", folder["archive"], "--person", "hut-07", "--start", Start, "--format", "ndjson");
        var session = Assert.Single(SessionArchive.Sessions(folder["archive"]));

        var again = ProgramRun.Of("replay", session, "--format", "ndjson");

        Assert.Equal(first.Lines.Where(line => !line.Contains("\"session\"", StringComparison.Ordinal)), again.Lines.Where(line => !line.Contains("\"session\"", StringComparison.Ordinal)), StringComparer.Ordinal);
        Assert.Equal(91, ProgramRun.Of("trend", "--archive", folder["archive"], "--person", "hut-07", "--format", "ndjson").Objects("course").Single().GetProperty("last").GetDouble());
        Assert.Equal("same", ProgramRun.Of("compare", "--baseline", folder["archive"], "--format", "ndjson").Objects("recording").Single().GetProperty("verdict").GetString());
        Assert.Equal(0, ProgramRun.Of("report", session, "--out", folder["session.png"]).Status);
        Assert.Equal(0, ProgramRun.Of("report", session, "--out", folder["session.html"]).Status);
        Assert.DoesNotContain("NaN", File.ReadAllText(folder["session.html"]), StringComparison.Ordinal);
    }

    [Fact]
    public void WhatIsNoSuchFileIsOneSentence()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("replay", folder.Write("a.csv", "time_s,red\n0,1\n"), "--readings").IsRefused();
        ProgramRun.Of("replay", folder.Write("b.csv", "time_s,spo2\n0,\n0.5,ninety\n"), "--readings", "--quiet").IsRefused();
        ProgramRun.Of("replay", folder.Write("c.csv", "time_s,frame\n0,1C61\n"), "--readings", "--quiet").IsRefused();
        ProgramRun.Of("replay", folder.Write("s.csv", "time_s,spot_check\n0,03C5F33C00\n"), "--readings", "--quiet").IsRefused();
        ProgramRun.Of("replay", folder["none.csv"], "--readings").IsRefused();
        var one = ProgramRun.Of("replay", folder.Write("d.csv", Low + "41,ninety,88\n"), "--readings", "--format", "ndjson");
        Assert.Equal((0, 1), (one.Status, Whole(one.Objects("end").Single(), "refusedRows")));
        Assert.Contains("line 43", one.Error, StringComparison.Ordinal);
    }

    private static int Whole(JsonElement line, string name) => line.GetProperty(name).GetInt32();
}
