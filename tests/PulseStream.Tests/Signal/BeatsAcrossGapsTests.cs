using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>How many beats there were where samples are missing.</summary>
public sealed class BeatsAcrossGapsTests
{
    private const double BinRateHz = 100;
    private const double Interval = 80;

    [Fact]
    public void BeatsThatAGapHidesAreCounted()
    {
        var gaps = Gaps((310, 390));
        Assert.Equal(Interval, Mean([0, 80, 160, 240, 480, 560], gaps), 9);
    }

    [Fact]
    public void WhatRisesAtAGapsEndIsNoBeat()
    {
        var gaps = Gaps((300, 328));
        Assert.Equal(Interval, Mean([0, 80, 160, 240, 297, 320, 400, 480], gaps), 9);
    }

    [Fact]
    public void WhereTheIntervalDoesNotFitNobodyKnows()
    {
        var gaps = Gaps((270, 340));
        Assert.True(double.IsNaN(Mean([0, 80, 160, 240, 360, 440, 520], gaps)));
    }

    [Fact]
    public void WithoutWholeIntervalsThePeriodTells()
    {
        var gaps = Gaps((30, 50), (100, 120), (180, 210), (270, 290));
        Assert.Equal(Interval, Mean([0, 80, 160, 240, 320], gaps), 9);
    }

    [Fact]
    public void FewBeatsInALongGapSpeakForNothing()
    {
        var gaps = Gaps((200, 800));
        Assert.True(double.IsNaN(Mean([0, 80, 160], gaps)));
    }

    private static BridgedGaps Gaps(params (long From, long To)[] all)
    {
        var gaps = new BridgedGaps(BinRateHz);
        foreach (var (from, to) in all)
        {
            gaps.Add(from, to);
        }

        return gaps;
    }

    private static double Mean(double[] beats, BridgedGaps gaps) => BeatsAcrossGaps.MeanInterval(beats, gaps, Interval * 1.05, leastBins: 300);
}
