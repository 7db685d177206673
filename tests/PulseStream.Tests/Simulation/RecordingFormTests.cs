using CsCheck;
using PulseStream.Samples;
using PulseStream.Simulation;
using Xunit;

namespace PulseStream.Tests.Simulation;

public sealed class RecordingFormTests
{
    private static readonly Scenario Rough = new()
    {
        DurationSeconds = 20,
        RateHz = 50,
        MissingShare = 0.1,
        RepeatShare = 0.1,
        CounterBits = 8,
        WithAmbientColumn = true,
        WithAcceleration = true,
        Episodes = [ScenarioText.ParseEpisode("gap:5-6.5"), ScenarioText.ParseEpisode("motion:8-12")],
    };

    [Fact]
    public void TheSameSeedGivesTheSameTextAndAnotherSeedAnother()
    {
        Assert.Equal(Text(Rough), Text(Rough));
        Assert.False(string.Equals(Text(Rough), Text(Rough with { Seed = 2 }), StringComparison.Ordinal));
    }

    [Fact]
    public void BlocksOfAnySizeHoldTheSameSamples()
    {
        var whole = Indexed(Rough, 100_000);
        Gen.Int[1, 300].Sample(size => whole.SequenceEqual(Indexed(Rough, size)), iter: 20);
    }

    [Fact]
    public void GapsAreJumpsOfTheIndex()
    {
        var indices = Indexed(Rough with { MissingShare = 0 }, 64).Select(s => s.Index).ToArray();
        Assert.Equal(Enumerable.Range(0, 250).Concat(Enumerable.Range(325, 675)).Select(i => (long)i), indices);
    }

    [Fact]
    public void RandomLossTakesTheStatedShare()
    {
        var left = Indexed(Rough with { DurationSeconds = 1000, Episodes = [] }, 1000).Count;
        // 50,000 samples lose 10 % give or take 0.13 %; four times that.
        Assert.Equal(0.9, left / 50_000.0, 0.006);
    }

    [Fact]
    public void RowsAreTheBlocksWithRepeatsAndAWrappedCounter()
    {
        var rows = new SimulatedRecording(Rough).Rows().ToArray();
        Assert.All(rows, r => Assert.Equal((long)Math.Round(r.Seconds * 50) % 256, r.Counter));
        Assert.Equal(Indexed(Rough, 64).Select(s => s.Sample), rows.DistinctBy(r => r.Seconds).Select(r => r.Sample));
        Assert.InRange(rows.Length - rows.DistinctBy(r => r.Seconds).Count(), 50, 130);
    }

    [Fact]
    public void TheTextHasOneColumnForEachValueAndNoMore()
    {
        var lines = Text(Rough).Split('\n');
        Assert.Equal("sample,time_s,red,infrared,ambient,accel_x,accel_y,accel_z", lines[0]);
        Assert.All(lines[1..^1], l => Assert.Equal(8, l.Split(',').Length));
        Assert.StartsWith("sample,time_s,red,infrared\n0,0,", Text(new Scenario { DurationSeconds = 1 }));
    }

    [Fact]
    public void DarknessIsNeverCountedBelowNothing() => Assert.DoesNotContain(
        new SimulatedRecording(new Scenario { WithAmbientColumn = true, Noise = 1e-3 }).Rows(),
        r => double.IsNegative(r.Sample.Ambient));

    [Fact]
    public void TheTruthNamesTheFingerAndWhatDisturbs()
    {
        var scenario = new Scenario
        {
            DurationSeconds = 4.7,
            Episodes = [ScenarioText.ParseEpisode("off:1-2"), ScenarioText.ParseEpisode("motion:1.5-3"), ScenarioText.ParseEpisode("flicker:all")],
        };
        using var text = new StringWriter();
        TruthText.WriteSeconds(new SimulatedRecording(scenario), text);
        Assert.Equal(
            "second,spo2,pulse,perfusion,finger,disturbances\n0,97,72,2,on,flicker\n1,,,,off,motion flicker\n2,97,72,2,on,motion flicker\n3,97,72,2,on,flicker\n",
            text.ToString());
    }

    [Fact]
    public void TheTruthLiesBesideTheRecording()
    {
        Assert.Equal("a/night.truth.csv", TruthText.SecondsPath("a/night.csv"));
        Assert.Equal("a/night.beats.csv", TruthText.BeatsPath("a/night.csv"));
    }

    [Fact]
    public void ALongRecordingKeepsOnlyWhatItNeeds()
    {
        var before = GC.GetAllocatedBytesForCurrentThread();
        var rows = new SimulatedRecording(new Scenario { DurationSeconds = 2000 }).Rows().Count();
        Assert.Equal(200_000, rows);
        // Tables at the start; afterwards nothing a sample.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 300_000);
    }

    private static string Text(Scenario scenario)
    {
        using var text = new StringWriter();
        RecordingText.Write(new SimulatedRecording(scenario), text);
        return text.ToString();
    }

    private static List<(long Index, Sample Sample)> Indexed(Scenario scenario, int blockSize) =>
        [.. new SimulatedRecording(scenario).Blocks(blockSize).SelectMany(
            b => b.Samples.ToArray().Select((s, i) => (b.FirstIndex + i, s)))];
}
