using System.Text.Json;
using PulseStream.Page.Live;
using PulseStream.Samples;
using PulseStream.Simulation;
using Xunit;

namespace PulseStream.Tests.Page;

public sealed class WaveCutterTests
{
    private static readonly TimeSpan Second = TimeSpan.FromSeconds(1);

    [Theory]
    [InlineData(25, 25)]
    [InlineData(50, 50)]
    [InlineData(100, 50)]
    [InlineData(1000, 58)]
    public void SamplesThatComeOneByOneAreToldTogetherAtLeastTwentyFiveTimesASecond(int hz, int updates)
    {
        var told = Cut(hz, seconds: 4, samplesPerBlock: 1);
        Assert.InRange(told.Count / 4.0, updates, WaveCutter.MostUpdatesPerSecond);
    }

    [Theory]
    [InlineData(50)]
    [InlineData(1000)]
    public void TheWaveIsTheSameHoweverItIsCut(int hz)
    {
        var (single, whole) = (Heights(Cut(hz, 4, 1)), Heights(Cut(hz, 4, hz)));
        Assert.Equal(whole[..single.Count], single);
        Assert.True(single.Count > 0.97 * whole.Count);
    }

    [Fact]
    public void WhatComesFourTimesASecondIsToldTwentyFiveTimes()
    {
        var clock = new SteppedClock();
        var recording = new SimulatedRecording(new Scenario { RateHz = 100, DurationSeconds = 4 });
        var cutter = new WaveCutter(recording.Header, clock);
        var told = new List<PageEvent>();
        foreach (var block in recording.Blocks(25))
        {
            clock.Move(Second / 4);
            for (var at = 0; at < block.Samples.Length; at += 4)
            {
                told.AddRange(cutter.Cut(new SampleBlock(block.FirstIndex + at, block.Samples.Slice(at, Math.Min(4, block.Samples.Length - at)))));
            }
        }

        Assert.InRange(told.Count / 4.0, 25, WaveCutter.MostUpdatesPerSecond);
        Assert.Equal(400, Heights(told).Count);
    }

    [Fact]
    public void HoweverFastAPlayerIsThereAreNoMoreUpdates()
    {
        var clock = new SteppedClock();
        var recording = new SimulatedRecording(new Scenario { RateHz = 100, DurationSeconds = 200 });
        var cutter = new WaveCutter(recording.Header, clock);
        var told = 0;
        foreach (var block in recording.Blocks(4))
        {
            clock.Move(Second / 2500);
            told += cutter.Cut(block).Count;
        }

        Assert.InRange(told / 2.0, 1, WaveCutter.MostUpdatesPerSecond + 5);
    }

    [Fact]
    public void AGapDividesWhatIsTold()
    {
        var clock = new SteppedClock();
        var cutter = new WaveCutter(new SimulatedRecording(new Scenario { RateHz = 50 }).Header, clock);
        cutter.Cut(new SampleBlock(0, new Sample[5]));
        Assert.Empty(cutter.Cut(new SampleBlock(5, new Sample[5])));

        clock.Move(Second);
        var told = cutter.Cut(new SampleBlock(100, new Sample[5]));

        Assert.Equal([5, 100], told.Select(one => JsonElement.Parse(one.Json).GetProperty("index").GetInt64()));
    }

    private static List<PageEvent> Cut(int hz, int seconds, int samplesPerBlock)
    {
        var clock = new SteppedClock();
        var recording = new SimulatedRecording(new Scenario { RateHz = hz, DurationSeconds = seconds });
        var cutter = new WaveCutter(recording.Header, clock);
        var told = new List<PageEvent>();
        foreach (var block in recording.Blocks(samplesPerBlock))
        {
            clock.Move(Second * block.Samples.Length / hz);
            told.AddRange(cutter.Cut(block));
        }

        return told;
    }

    private static List<string> Heights(List<PageEvent> told) =>
        [.. told.SelectMany(one => JsonElement.Parse(one.Json).GetProperty("heights").EnumerateArray()).Select(height => height.ToString())];
}
