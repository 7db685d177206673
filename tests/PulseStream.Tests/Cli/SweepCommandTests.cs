using System.Text.Json;
using PulseStream.Tests.Archive;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class SweepCommandTests
{
    private static readonly string[] Small =
        ["sweep", "--spo2", "85,97", "--perfusion", "0.05,2", "--pulse", "75", "--motion", "0", "--noise", "2e-4", "--rate", "50", "--runs", "2", "--seconds", "20", "--format", "ndjson"];

    [Fact]
    public void CellsComeInOrderAndThenTheTotal()
    {
        var run = ProgramRun.Of([.. Small, "--quiet"]);

        Assert.Equal((0, ""), (run.Status, run.Error));
        var cells = run.Objects("cell").ToArray();
        Assert.Equal([(85, 0.05), (85, 2), (97, 0.05), (97, 2)], cells.Select(cell => (cell.GetProperty("spo2").GetDouble(), cell.GetProperty("perfusion").GetDouble())));
        var good = cells[1];
        Assert.InRange(good.GetProperty("arms").GetDouble(), 0, 1);
        Assert.InRange(good.GetProperty("used").GetDouble(), 0.7, 1);
        Assert.Equal(0, good.GetProperty("wrong").GetInt32());
        Assert.InRange(good.GetProperty("first").GetDouble(), 5, 15);
        Assert.True(good.GetProperty("readings").GetInt32() >= 2);
        Assert.Equal(JsonValueKind.Null, cells[0].GetProperty("first").ValueKind);
        var total = JsonDocument.Parse(run.Lines[^1]).RootElement;
        Assert.Equal("total", total.GetProperty("kind").GetString());
        Assert.Equal(cells.Sum(cell => cell.GetProperty("readings").GetInt32()), total.GetProperty("readings").GetInt32());
    }

    [Fact]
    public void TheNumberOfCoresAndTheHourChangeNothing()
    {
        var one = ProgramRun.Of([.. Small, "--cores", "1"]);
        var four = ProgramRun.Of([.. Small, "--cores", "4"]);

        Assert.Equal(one.Output, four.Output, StringComparer.Ordinal);
        Assert.Contains("8 of 8 recordings", one.Error, StringComparison.Ordinal);
        Assert.NotEqual(one.Output, ProgramRun.Of([.. Small, "--seed", "2"]).Output, StringComparer.Ordinal);
    }

    [Fact]
    public void EveryRunIsARowOfParquetAndThePageHasItsMaps()
    {
        using var folder = new TemporaryFolder();

        ProgramRun.Of([.. Small, "--quiet", "--out", folder["out"]]);

        var rows = Sql.Rows($"select spo2, perfusion, run, usedSeconds, arms from '{folder["out"]}/runs.parquet' order by spo2, perfusion, run");
        Assert.Equal(8, rows.Count);
        Assert.Equal(("spo2", 97.0), rows[^1][0]);
        var page = File.ReadAllText(Path.Combine(folder["out"], "sweep.html"));
        Assert.Contains("Accuracy of seconds", page, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.Equal(
            ["sweep-accuracy-of-readings", "sweep-accuracy-of-seconds", "sweep-first-reading", "sweep-refused", "sweep-wrong-readings"],
            Directory.GetFiles(folder["out"], "*.png").Select(file => Path.GetFileNameWithoutExtension(file)).Order(StringComparer.Ordinal), StringComparer.Ordinal);
        Assert.Equal(5, Directory.GetFiles(folder["out"], "*.svg").Length);
    }

    [Fact]
    public void ALimitThatIsCrossedIsTold()
    {
        var run = ProgramRun.Of([.. Small.Select(word => word == "0.05,2" ? "0.1,0.2,2" : word), "--quiet", "--limit", "0.3"]);

        var crossings = run.Objects("total").Single().GetProperty("boundary").EnumerateArray().Where(crossing => crossing.GetProperty("axis").GetString() == "perfusion").ToArray();
        Assert.NotEmpty(crossings);
        Assert.All(crossings, crossing => Assert.True(
            crossing.GetProperty("within").GetProperty("perfusion").GetDouble() > crossing.GetProperty("beyond").GetProperty("perfusion").GetDouble()));
    }

    [Fact]
    public void RecordedCellsAreHeldAgainstTheTruthBesideThem()
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("simulate", folder["hut-a.csv"], "--seconds", "30", "--spo2", "90", "--quiet");
        folder.Write("hut-b.csv", "time_s,spo2,pulse\n" + string.Concat(Enumerable.Range(0, 21).Select(i => $"{i},84,70\n")));
        folder.Write("hut-b.truth.csv", "second,spo2,pulse,motion\n" + string.Concat(Enumerable.Range(0, 20).Select(i => $"{i},80,72,1\n")));
        folder.Write("alone.csv", "time_s,spo2\n0,80\n");

        var run = ProgramRun.Of("sweep", "--against", folder.Path, "--format", "ndjson", "--quiet");

        Assert.Equal(0, run.Status);
        var cells = run.Objects("cell").ToArray();
        Assert.Equal([90.0, 80.0], cells.Select(cell => cell.GetProperty("spo2").GetDouble()));
        Assert.InRange(cells[0].GetProperty("arms").GetDouble(), 0, 1);
        Assert.Equal(100, cells[0].GetProperty("rate").GetDouble());
        Assert.Equal(4, cells[1].GetProperty("bias").GetDouble());
        Assert.Equal(1, cells[1].GetProperty("motion").GetDouble());
        Assert.Equal(1, cells[1].GetProperty("used").GetDouble());
        Assert.Equal(2, cells[1].GetProperty("pulseArms").GetDouble());
    }

    [Theory]
    [InlineData("hut.hea")]
    [InlineData("hut.edf")]
    public void RecordedCellsMayBeInAnyFormatOfReplay(string name)
    {
        using var folder = new TemporaryFolder();
        ProgramRun.Of("simulate", folder["hut.csv"], "--seconds", "30", "--spo2", "90", "--quiet");
        ProgramRun.Of("convert", folder["hut.csv"], folder[name], "--quiet");
        var csv = ProgramRun.Of("replay", folder["hut.csv"], "--format", "ndjson", "--quiet");
        File.Delete(folder["hut.csv"]);

        var cell = ProgramRun.Of("sweep", "--against", folder.Path, "--format", "ndjson", "--quiet").Objects("cell").Single();

        Assert.Equal(90, cell.GetProperty("spo2").GetDouble());
        Assert.InRange(cell.GetProperty("arms").GetDouble(), 0, 1);
        Assert.Equal(csv.Objects("second").Count(second => second.GetProperty("usable").GetBoolean()) / 30.0, cell.GetProperty("used").GetDouble(), 1e-6);
    }

    [Fact]
    public void TwoRecordingsOfOneTruthAndASecondThatStandsThereTwiceAreOneSentence()
    {
        using var folder = new TemporaryFolder();
        folder.Write("hut.csv", "time_s,spo2\n0,84\n1,84\n");
        folder.Write("hut.truth.csv", "second,spo2\n0,84\n0,85\n");

        var twice = ProgramRun.Of("sweep", "--against", folder.Path, "--quiet");
        folder.Write("hut.edf", "");
        var two = ProgramRun.Of("sweep", "--against", folder.Path, "--quiet");

        twice.IsRefused();
        Assert.Contains("line 3: second 0 stands there twice", twice.Error, StringComparison.Ordinal);
        two.IsRefused();
        Assert.Contains("found hut.csv and hut.edf beside it", two.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--spo2", "97,x")]
    [InlineData("--spo2", "97,97")]
    [InlineData("--spo2", "40")]
    [InlineData("--rate", "10")]
    [InlineData("--runs", "0")]
    [InlineData("--against", "no-such-folder")]
    [InlineData("--against", ".")]
    public void AWrongOptionIsOneSentence(string option, string value)
    {
        using var folder = new TemporaryFolder();

        var run = ProgramRun.Of("sweep", option, value == "." ? folder.Path : value, "--quiet");

        run.IsRefused();
        Assert.Equal("", run.Output);
    }
}
