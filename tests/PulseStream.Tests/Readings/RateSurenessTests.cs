using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Where a counted rate is told and where not.</summary>
public sealed class RateSurenessTests
{
    // The lamp took the first wave of a pulse of 106 along; its second repeats 212 times a minute.
    [Theory]
    [InlineData(1.77, false)]
    [InlineData(1.6, false)]
    [InlineData(1.2, true)]
    [InlineData(2.4, true)]
    [InlineData(4.5, true)]
    public void WhatRepeatsTwiceAsFastAsALineThatWasTakenAwayMayBeItsOvertone(double lineHz, bool isSure)
    {
        var pulse = new WindowPulse { BeatCount = 25, RatePerMinute = 212, PeriodSeconds = 60 / 212.0, Periodicity = 0.9, Agreement = 0.98 };
        var second = new SignalSecond { Fit = new RatioFit { WindowSeconds = 8, Lines = 1, LineHz = lineHz }, Pulse = pulse };
        Assert.Equal(isSure, new RateSureness(new JudgeOptions(), hasRed: true).IsSure(second));
    }

    // Without its first wave, which goes with the baseline, a slow pulse whose third went with a lamp has its second and fourth left.
    [Theory]
    [InlineData(2.34, 8, false)]
    [InlineData(3.1, 8, true)]
    [InlineData(3.1, 4, false)]
    public void NoRateIsToldBesideALineOnTheThirdWaveNorOfFourSeconds(double lineHz, int windowSeconds, bool isSure)
    {
        var pulse = new WindowPulse { BeatCount = 9, RatePerMinute = 93.6, PeriodSeconds = 60 / 93.6, Periodicity = 0.9, Agreement = 0.98 };
        var second = new SignalSecond { Fit = new RatioFit { WindowSeconds = windowSeconds, Lines = 1, LineHz = lineHz }, Pulse = pulse };
        Assert.Equal(isSure, new RateSureness(new JudgeOptions(), hasRed: true).IsSure(second));
    }

    // A heart that flutters differs by a third in turn; early beats that come in turn differ by more, and repeat.
    [Theory]
    [InlineData(0.4, 0.2, true)]
    [InlineData(0.62, 0.2, false)]
    [InlineData(0.62, 0.8, true)]
    public void WhereNothingRepeatsSecondWavesMayBeCountedAmongBeatsThatDifferByMore(double irregularity, double periodicity, bool isSure)
    {
        var pulse = new WindowPulse { BeatCount = 18, RatePerMinute = 140, RateSpreadPerMinute = 2, PeriodSeconds = 60 / 140.0, Periodicity = periodicity, Irregularity = irregularity, Agreement = 0.95 };
        var second = new SignalSecond { Fit = new RatioFit { WindowSeconds = 8 }, Pulse = pulse };
        Assert.Equal(isSure, new RateSureness(new JudgeOptions(), hasRed: true).IsSure(second));
    }

    // A rhythm that varies by a fifth either way varies by less in some windows; breathing never does by as much, and one early beat is gone with its window.
    [Theory]
    [InlineData(0.17, 0.1, 3, true)]
    [InlineData(0.1, 0.1, 3, false)]
    [InlineData(0.4, 0.04, 8, false)]
    public void ARhythmIsIrregularOnTheAverage(double irregularity, double newest, int seconds, bool isIrregular)
    {
        var rate = new RateSureness(new JudgeOptions(), hasRed: true);
        Assert.All(Enumerable.Range(0, 16), _ => Assert.Equal(irregularity > 0.12, rate.IsIrregular(new WindowPulse { Irregularity = irregularity })));
        for (var k = 1; k < seconds; k++)
        {
            rate.IsIrregular(new WindowPulse { Irregularity = newest });
        }

        Assert.Equal(isIrregular, rate.IsIrregular(new WindowPulse { Irregularity = newest }));
    }

    // After seconds in which there may have been twice as many beats one that seems sure is chance; a single doubt says nothing of the next.
    [Theory]
    [InlineData("!!!!!!.", "       ")]
    [InlineData("...!...", "rrr rrr")]
    [InlineData("!!!!!!.....", "       rrrr")]
    public void ARateIsToldAgainOnceDoubtIsOver(string seconds, string told)
    {
        var rate = new RateSureness(new JudgeOptions(), hasRed: true);
        var sure = seconds.Select((second, n) => rate.IsSure(Second(n, 72) is var one && second == '!'
            ? one with { Pulse = one.Pulse with { RateSpreadPerMinute = 72 } }
            : one));
        Assert.Equal(told, string.Concat(sure.Select(s => s ? 'r' : ' ')));
    }

    // Breathing's second wave may be taken for a line of half the rate of a pulse of 120; no breathing is as fast as half of 200.
    [Theory]
    [InlineData(120, 1, 0.93, true)]
    [InlineData(120, 1, 0.97, false)]
    [InlineData(120, 1, 0, false)]
    [InlineData(200, 1.67, 0.93, false)]
    public void APulseBesideBreathingRepeatsNoBetterAfterTwoPeriods(double perMinute, double lineHz, double periodicityOfTwo, bool isSure)
    {
        var pulse = new WindowPulse { BeatCount = 15, RatePerMinute = perMinute, PeriodSeconds = 60 / perMinute, Periodicity = 0.95, PeriodicityOfTwo = periodicityOfTwo, Agreement = 0.98 };
        var second = new SignalSecond { Fit = new RatioFit { WindowSeconds = 8, Lines = 1, LineHz = lineHz }, Pulse = pulse };
        Assert.Equal(isSure, new RateSureness(new JudgeOptions(), hasRed: true).IsSure(second));
    }

    [Fact]
    public void NoRateIsToldThatTheOneBeforeCannotHaveBecome()
    {
        var sureness = new RateSureness(new JudgeOptions(), hasRed: true);
        Assert.True(sureness.IsSure(Second(11, 54)));
        Assert.False(sureness.IsSure(Second(12, 108)));
    }

    private static SignalSecond Second(int index, double perMinute) => new()
    {
        SecondIndex = index,
        Fit = new RatioFit { WindowSeconds = 8 },
        Pulse = new WindowPulse { BeatCount = 9, RatePerMinute = perMinute, PeriodSeconds = 60 / perMinute, Periodicity = 0.9, Agreement = 0.98 },
    };
}
