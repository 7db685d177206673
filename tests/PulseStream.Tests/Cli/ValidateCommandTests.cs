using System.Globalization;
using System.Text.Json;
using PulseStream.Accuracy;
using PulseStream.Tests.Accuracy;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class ValidateCommandTests
{
    private const string Header = "subject,reference,reading\n";

    [Fact]
    public void AGoodDeviceMeetsEveryCriterion()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("good.csv", Csv(SimulatedStudies.Of(12, 20, 4)));

        var run = ProgramRun.Of("validate", path, "--format", "ndjson", "--quiet");

        Assert.Equal((0, ""), (run.Status, run.Error));
        var line = JsonDocument.Parse(Assert.Single(run.Lines)).RootElement;
        Assert.Equal(240, line.GetProperty("n").GetInt32());
        Assert.Equal(12, line.GetProperty("subjects").GetInt32());
        Assert.InRange(line.GetProperty("arms").GetDouble(), line.GetProperty("armsLow").GetDouble(), line.GetProperty("armsHigh").GetDouble());
        Assert.True(line.GetProperty("loaLow").GetDouble() < line.GetProperty("loaHigh").GetDouble());
        Assert.Equal(["from", "to", "n", "subjects", "bias", "precision", "arms"], line.GetProperty("bands")[0].EnumerateObject().Select(member => member.Name).Take(7), StringComparer.Ordinal);
        Assert.All(line.GetProperty("criteria").EnumerateArray(), criterion => Assert.True(criterion.GetProperty("met").GetBoolean()));
        Assert.Equal(0, line.GetProperty("groups").GetArrayLength());
    }

    [Fact]
    public void AnUnmetCriterionIsExitStatusOne()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("few.csv", Csv(SimulatedStudies.Of(12, 5, 4)));

        var run = ProgramRun.Of("validate", path);

        Assert.Equal(1, run.Status);
        Assert.Contains("NOT MET  pairs: 60, at least 200", run.Output, StringComparison.Ordinal);
        Assert.All(run.Lines, line => Assert.InRange(line.Length, 0, 80));
        Assert.InRange(run.Lines.Length, 10, 60);
    }

    [Fact]
    public void EveryGroupIsToldAndTheLinesFitAPage()
    {
        using var folder = new TemporaryFolder();
        var pairs = SimulatedStudies.Of(12, 20, 4, subject => (subject % 3 == 0 ? "MST 8-10" : subject % 3 == 1 ? "MST 5-7" : "MST 1-4", 0));
        var path = folder.Write("tones.csv", "subject,reference,reading,skin_tone\n" + string.Concat(pairs.Select(pair =>
            string.Create(CultureInfo.InvariantCulture, $"{pair.Subject},{pair.Reference:0.0},{Math.Min(100, pair.Reading):0.0},{pair.SkinTone}\n"))));

        var text = ProgramRun.Of("validate", path, "--quiet");
        var line = JsonDocument.Parse(ProgramRun.Of("validate", path, "--quiet", "--format", "ndjson").Lines[0]).RootElement;

        Assert.Equal(["MST 1-4", "MST 5-7", "MST 8-10"], line.GetProperty("groups").EnumerateArray().Select(group => group.GetProperty("skin_tone").GetString()!), StringComparer.Ordinal);
        Assert.Contains(line.GetProperty("criteria").EnumerateArray(), criterion => criterion.GetProperty("name").GetString() == "darkly pigmented subjects" && criterion.GetProperty("value").GetInt32() == 4);
        Assert.Contains("not in force: difference between skin tones", text.Output, StringComparison.Ordinal);
        Assert.All(text.Lines, shown => Assert.InRange(shown.Length, 0, 80));
    }

    [Fact]
    public void OwnCriteriaDecide()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("few.csv", Csv(SimulatedStudies.Of(12, 5, 4)));
        var criteria = folder.Write("own.json", """{"name":"own","criteria":[{"name":"A_rms","measure":"arms","most":4,"source":"our plan"},],}""");

        Assert.Equal(0, ProgramRun.Of("validate", path, "--criteria", criteria).Status);
    }

    [Fact]
    public void PulseRatesAreComparedTheSameWay()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("pulse.csv", Header + "a,60,62\na,140,141\nb,72,70\nb,180,183\n");

        var run = ProgramRun.Of("validate", path, "--quantity", "pulse", "--format", "ndjson", "--quiet");

        Assert.Equal(0, run.Status);
        Assert.Equal(Math.Sqrt((4 + 1 + 4 + 9) / 4.0), JsonDocument.Parse(run.Lines[0]).RootElement.GetProperty("arms").GetDouble(), 1e-8);
    }

    [Theory]
    [InlineData("", "it is empty")]
    [InlineData(Header, "no rows")]
    [InlineData(Header + "a,90,91\n", "one pair")]
    [InlineData(Header + "a,90,91\na,91,92\n", "one subject")]
    [InlineData(Header + "a,90,91\nb,101,92\n", "line 3: expected a number from 0 to 100 in column 'reference', found '101'")]
    [InlineData(Header + "a,90,91\nb,91,-1\n", "line 3")]
    [InlineData(Header + "a,90,91\n\nb,91,high\n", "line 4")]
    [InlineData(Header + "a,90,91\nb,91,NaN\n", "line 3")]
    [InlineData(Header + "a,90,91\nb,91,\n", "found nothing")]
    [InlineData(Header + "a,90,91\n,91,92\n", "column 'subject'")]
    [InlineData(Header + "a,90,91\nb,91\n", "expected 3 fields as in the header, found 2")]
    [InlineData("subject,reference,spo2\na,90,91\n", "no column 'reading'")]
    [InlineData("subject;reference;reading\na;90;91\n", "Separate the columns with commas")]
    [InlineData("subject,reference,reading,reading\na,90,91,92\n", "twice")]
    [InlineData("subject,reference,reading\n\"a,90,91\n", "quotation mark")]
    public void APoorTableIsOneSentenceWithItsPlace(string text, string words)
    {
        using var folder = new TemporaryFolder();

        var run = ProgramRun.Of("validate", folder.Write("pairs.csv", text), "--format", "ndjson", "--quiet");

        run.IsRefused();
        Assert.Equal("", run.Output);
        Assert.Contains("pairs.csv", run.Error, StringComparison.Ordinal);
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void ColumnsAreFoundByNameAndUnknownOnesAreNamedOnce()
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("pairs.csv", "\uFEFFREADING,note,Subject,reference,skin_tone\r\n91,\"a, b\",p,90,light\r\n88,,q,90,dark\r\n");

        var run = ProgramRun.Of("validate", path, "--format", "ndjson");

        Assert.Equal(1, run.Status);
        Assert.Contains("ignored: 'note'.", run.Error, StringComparison.Ordinal);
        var line = JsonDocument.Parse(run.Lines[0]).RootElement;
        Assert.Equal(-0.5, line.GetProperty("bias").GetDouble());
        Assert.Equal(3, line.GetProperty("groupDifference").GetProperty("difference").GetDouble());
    }

    [Fact]
    public void SwappedColumnsAreWarnedOf()
    {
        using var folder = new TemporaryFolder();
        var pairs = SimulatedStudies.Of(30, 20, 4, within: 2.5);
        var right = folder.Write("right.csv", Csv(pairs));
        var swapped = folder.Write("swapped.csv", Csv([.. pairs.Select(pair => new PairedReading(pair.Subject, Math.Min(100, pair.Reading), pair.Reference))]));

        Assert.DoesNotContain("may be swapped", ProgramRun.Of("validate", right).Error, StringComparison.Ordinal);
        Assert.Contains("may be swapped", ProgramRun.Of("validate", swapped).Error, StringComparison.Ordinal);
    }

    internal static string Csv(IEnumerable<PairedReading> pairs) => "subject,reference,reading\n" + string.Concat(pairs.Select(pair =>
        string.Create(CultureInfo.InvariantCulture, $"{pair.Subject},{pair.Reference:0.0},{Math.Min(100, pair.Reading):0.0}\n")));
}
