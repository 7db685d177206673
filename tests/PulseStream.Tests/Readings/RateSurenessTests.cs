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
    [InlineData(3.53, true)]
    public void WhatRepeatsTwiceAsFastAsALineThatWasTakenAwayMayBeItsOvertone(double lineHz, bool isSure)
    {
        var pulse = new WindowPulse { BeatCount = 25, RatePerMinute = 212, PeriodSeconds = 60 / 212.0, Periodicity = 0.9, Agreement = 0.98 };
        var second = new SignalSecond { Fit = new RatioFit { WindowSeconds = 8, Lines = 1, LineHz = lineHz }, Pulse = pulse };
        Assert.Equal(isSure, new RateSureness(new JudgeOptions(), hasRed: true).IsSure(second));
    }
}
