using System.Text.Json;
using System.Text.RegularExpressions;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class TextOutputTests
{
    // Terminals of people are 80 columns wide at least.
    private const int Columns = 80;

    private static readonly ProgramRun Run = ProgramRun.Of("replay", Recordings.PathOf("finger-slips.csv"));

    [Fact]
    public void ReadingsSittingsAndAdviceAreShown()
    {
        Assert.Contains("READING: SpO2 95 %", Run.Output, StringComparison.Ordinal);
        Assert.Contains("SITTING: ", Run.Output, StringComparison.Ordinal);
        Assert.Contains("ADVICE: ", Run.Output, StringComparison.Ordinal);
        Assert.Contains("No medical device, no diagnosis.", Run.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void AnIntervalIsRoundedOutwards()
    {
        var shown = Regex.Matches(Run.Output, "READING: SpO2 [0-9]+ % \\((?<low>[0-9.]+)–(?<high>[0-9.]+)\\)", RegexOptions.ExplicitCapture)
            .Select(match => (Low: double.Parse(match.Groups["low"].Value), High: double.Parse(match.Groups["high"].Value)));
        var told = ProgramRun.Of("replay", Recordings.PathOf("finger-slips.csv"), "--format", "ndjson").Lines
            .Select(line => JsonDocument.Parse(line).RootElement)
            .Where(line => line.GetProperty("kind").GetString() == "reading");
        Assert.All(shown.Zip(told, (text, line) => (text, line)), pair =>
        {
            Assert.InRange(pair.text.Low, pair.line.GetProperty("spo2Low").GetDouble() - 0.1, pair.line.GetProperty("spo2Low").GetDouble());
            Assert.InRange(pair.text.High, pair.line.GetProperty("spo2High").GetDouble(), pair.line.GetProperty("spo2High").GetDouble() + 0.1);
        });
        Assert.NotEmpty(shown);
    }

    [Fact]
    public void RefusedSecondsInARowAreOneLine()
    {
        Assert.Contains(Run.Lines, line => line.Contains('–', StringComparison.Ordinal) && line.Contains("refused: ", StringComparison.Ordinal));
        Assert.True(Run.Lines.Count(line => line.Contains("refused: ", StringComparison.Ordinal)) < 30);
    }

    [Fact]
    public void NoLineIsWiderThanATerminal() =>
        Assert.All(Run.Lines.Where(line => !line.Contains("policy ", StringComparison.Ordinal)), line => Assert.True(line.TrimEnd().Length <= Columns, line));

    [Fact]
    public void QuietSaysNothingBesideResults()
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(Recordings.WarmFinger).Replace("infrared\n", "infrared,colour\n", StringComparison.Ordinal).Replace("\n1,0.02,", "\nx,0.02,", StringComparison.Ordinal);
        var path = folder.Write("odd.csv", text);

        Assert.Contains("columns ignored", ProgramRun.Of("replay", path, "--rate", "50").Error, StringComparison.Ordinal);
        Assert.DoesNotContain("columns ignored", ProgramRun.Of("replay", path, "--quiet").Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--help")]
    [InlineData("replay", "--help")]
    [InlineData("advise", "--help")]
    [InlineData("simulate", "--help")]
    public void HelpIsThereForEveryCommand(params string[] args)
    {
        var run = ProgramRun.Of(args);

        Assert.Equal(0, run.Status);
        Assert.Contains("Usage:", run.Output, StringComparison.Ordinal);
    }
}
