using System.Globalization;
using System.Text.Json;
using Xunit;

namespace PulseStream.Tests.Cli;

/// <summary>An instrument whose clock is off at either end of the rates: its own times tell a rate just outside them.</summary>
public sealed class ClockOffRateTests
{
    private static readonly string[] Options = ["--format", "ndjson", "--quiet"];

    // Limits of a quiet finger: 0.6 points of SpO2, 1.5 beats a minute; the simulator's finger has 97 % and 72 /min.
    [Theory]
    [InlineData(25, -4, 24)]
    [InlineData(25, -2, 24.5)]
    [InlineData(1000, 4, 1040)]
    public void AClockThatIsOffIsReadAsAQuietFinger(int builtFor, double offPercent, double trueHz)
    {
        using var folder = new TemporaryFolder();
        var path = Recorded(folder, builtFor, offPercent, trueHz);

        var run = ProgramRun.Of(["replay", path, "--rate", $"{builtFor}", "--archive", folder["archive"], .. Options]);

        Assert.Equal(0, run.Status);
        Assert.Equal(trueHz, Assert.Single(run.Objects("session")).GetProperty("sampleRateHz").GetDouble());
        Assert.All(run.Objects("second").Where(second => second.GetProperty("second").GetInt32() >= 15), IsRight);
        Assert.Equal(run.Output, ProgramRun.Of(["replay", folder["archive"], .. Options]).Output);
    }

    [Theory]
    [InlineData("copy.hea")]
    [InlineData("copy.edf")]
    [InlineData("copy.parquet")]
    public void ACopyInAnotherFormatIsReadAlike(string name)
    {
        using var folder = new TemporaryFolder();
        var path = Recorded(folder, 25, -2, 24.5);
        Assert.Equal(0, ProgramRun.Of("convert", path, folder[name]).Status);

        var copy = ProgramRun.Of(["replay", folder[name], .. Options]);

        Assert.Equal(0, copy.Status);
        Assert.Equal(ProgramRun.Of(["replay", path, .. Options]).Lines[1..^1], copy.Lines[1..^1]);
    }

    private static void IsRight(JsonElement second)
    {
        Assert.True(second.GetProperty("usable").GetBoolean());
        Assert.InRange(second.GetProperty("spo2").GetDouble(), 96.4, 97.6);
        Assert.InRange(second.GetProperty("pulse").GetDouble(), 70.5, 73.5);
    }

    // The simulator's own times are those of the stated rate: here they are the true ones, as a computer that receives the samples writes them.
    private static string Recorded(TemporaryFolder folder, int builtFor, double offPercent, double trueHz)
    {
        ProgramRun.Of("simulate", folder["made.csv"], "--seconds", "40", "--rate", $"{builtFor}", "--rate-off", offPercent.ToString(CultureInfo.InvariantCulture));
        var rows = File.ReadAllLines(folder["made.csv"]);
        var at = Array.IndexOf(rows[0].Split(','), "time_s");
        return folder.Write("off.csv", rows[0] + "\n" + string.Concat(rows[1..].Select((row, sample) => WithTime(row, at, sample / trueHz) + "\n")));
    }

    private static string WithTime(string row, int at, double seconds)
    {
        var fields = row.Split(',');
        fields[at] = seconds.ToString("F6", CultureInfo.InvariantCulture);
        return string.Join(',', fields);
    }
}
