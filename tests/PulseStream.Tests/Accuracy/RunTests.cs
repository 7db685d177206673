using System.Globalization;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Runs;
using PulseStream.Accuracy.Statistics;
using PulseStream.Tests.Cli;
using PulseStream.Tests.OpenRecordings;
using Xunit;

namespace PulseStream.Tests.Accuracy;


/// <summary>Two series become pairs.</summary>
public sealed class RunTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(12.4, 1.5)]
    [InlineData(-7, -2)]
    [InlineData(35, 0.5)]
    public void LagAndBiasOfARunAreFound(double lag, double bias)
    {
        var run = AlignedRun.Of("hut-01", Shown(lag, bias, 0.3, 1), Shown(0, 0, 0.2, 2), PlateauRule.Usual(Quantity.Saturation));

        Assert.True(run.Lag.IsKnown);
        Assert.Equal(lag, run.Lag.Seconds, 0.6);
        Assert.InRange(run.Pairs.Count, 10, 20);
        Assert.Equal(bias, Measures.Of(run.Pairs).Bias!.Value, 0.15);
        Assert.InRange(run.Pairs.Min(pair => pair.Reference), 77.5, 78.5);
    }

    [Fact]
    public void WhatNeverChangesTellsNoLag()
    {
        var flat = new TimedValues([.. Enumerable.Range(0, 300).Select(i => (double)i)], [.. Enumerable.Repeat(97.0, 300)]);

        Assert.Equal(new Lag(0, IsKnown: false), Lag.Of(flat, flat));
    }

    [Fact]
    public void AGapIsNoPlateau()
    {
        var gap = new TimedValues([.. Enumerable.Range(0, 50).Select(i => i < 20 ? (double)i : i + 20)], [.. Enumerable.Repeat(97.0, 50)]);

        Assert.Single(AlignedRun.Of("a", gap, gap, PlateauRule.Usual(Quantity.Saturation)).Pairs);
    }

    [Theory]
    [InlineData(100001, 25.7)]
    [InlineData(100004, 17.8)]
    [InlineData(100005, 8.6)]
    public void OneOfFourInstrumentsIsOutOfStepWithTheOthersAndTheLagMendsIt(int subject, double seconds)
    {
        var columns = OpenData.Columns(Path.Combine("induced-hypoxaemia", $"{subject}-reference.csv"));
        var others = columns[0].Select((_, i) => Settle([columns[1][i], columns[3][i], columns[4][i]])).ToArray();
        var (device, reference) = (CourseOf(columns[0], columns[2]), CourseOf(columns[0], others));

        var run = AlignedRun.Of($"{subject}", device, reference, PlateauRule.Usual(Quantity.Saturation));

        // The second instrument shows a fall first: read from the raw columns, where it is at 94 % while the others are at 96.
        Assert.Equal(-seconds, run.Lag.Seconds, 0.5);
        Assert.InRange(Measures.Of(run.Pairs).Arms!.Value, 0.5, 1.6);
    }

    [Fact]
    public void TheCommandTellsTheLag()
    {
        using var folder = new TemporaryFolder();
        var device = folder.Write("device.csv", Csv(Shown(9, 1, 0.2, 3)));
        var reference = folder.Write("reference.csv", Csv(Shown(0, 0, 0.2, 4)));
        var list = folder.Write("runs.csv", "subject,device,reference,skin_tone\nhut-01,device.csv,reference.csv,light\nhut-02,device.csv,reference.csv,dark\n");

        var one = ProgramRun.Of("validate", "--device", device, "--reference", reference, "--format", "ndjson");
        var two = ProgramRun.Of("validate", "--runs", list, "--format", "ndjson", "--quiet");

        Assert.Equal(1, one.Status);
        var line = one.Objects("accuracy").Single();
        Assert.Equal(9, line.GetProperty("runs")[0].GetProperty("lagSeconds").GetDouble(), 0.6);
        Assert.Equal(System.Text.Json.JsonValueKind.Null, line.GetProperty("armsLow").ValueKind);
        Assert.Contains("s after the reference", one.Error, StringComparison.Ordinal);
        Assert.Equal(2, two.Objects("accuracy").Single().GetProperty("groups").GetArrayLength());
    }

    [Theory]
    [InlineData("time_s,spo2\n0,97\n0,97\n", "line 3: expected a time after 0 s")]
    [InlineData("time_s,value\n0,97\n1,97\n", "no column 'spo2' or 'pulse'")]
    [InlineData("time_s,spo2\n0,\n1,\n", "no column 'spo2' or 'pulse'")]
    [InlineData("time_s,spo2\n0,97\n1,x\n", "line 3")]
    [InlineData("time_s,spo2\n0,97\n1,97\n", "no stretch of 30 s")]
    [InlineData("time_s,pulse\n0,97\n1,97\n", "no column 'spo2'")]
    public void APoorSeriesIsOneSentence(string text, string words)
    {
        using var folder = new TemporaryFolder();
        var path = folder.Write("series.csv", text);

        var run = ProgramRun.Of("validate", "--device", path, "--reference", path, "--quiet");

        run.IsRefused();
        Assert.Contains(words, run.Error, StringComparison.Ordinal);
    }

    private static double Settle(double[] values) => values.Order().ElementAt(1);

    private static TimedValues CourseOf(double[] times, double[] values)
    {
        var known = times.Zip(values).Where(point => !double.IsNaN(point.Second)).ToArray();
        return new([.. known.Select(point => point.First)], [.. known.Select(point => point.Second)]);
    }

    // Six plateaus from 98 down to 78 % and back, a minute each, half a minute between them.
    private static TimedValues Shown(double lag, double bias, double noise, int seed)
    {
        var chance = new Random(seed);
        double[] levels = [98, 94, 90, 86, 82, 78, 98];
        double[] times = [.. Enumerable.Range(0, 630).Select(i => (double)i)];
        return new(times, [.. times.Select(t =>
        {
            var at = Math.Clamp((t - lag) / 90, 0, 6);
            var way = Math.Max(0, (at - Math.Floor(at) - (2 / 3.0)) * 3);
            var next = levels[Math.Min(6, (int)at + 1)];
            return Math.Min(100, levels[(int)at] + (way * (next - levels[(int)at])) + bias + (noise * SimulatedStudies.Normal(chance)));
        })]);
    }

    private static string Csv(TimedValues course) => "time_s,spo2\n" + string.Concat(course.Times.Zip(course.Values).Select(point =>
        string.Create(CultureInfo.InvariantCulture, $"{point.First},{point.Second:0.00}\n")));
}
