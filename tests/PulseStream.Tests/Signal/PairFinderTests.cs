using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Fronts that come in pairs are found, measured, and told from others.</summary>
public sealed class PairFinderTests
{
    private const double BinRateHz = 50;
    private const int Period = 60;
    private const int Delay = 20;

    [Fact]
    public void APairIsMeasured()
    {
        Assert.True(Find(_ => Delay, out var pairs, out _, out _));
        Assert.Equal(Period / BinRateHz, pairs.PeriodSeconds, 0.001);
        Assert.Equal(Delay / BinRateHz, pairs.DelaySeconds, 0.001);
        Assert.Equal(0.5, pairs.SlopeShare, 0.01);
        Assert.Equal(5 / BinRateHz, pairs.FrontSeconds, 0.01);
        Assert.Equal(8 / BinRateHz, pairs.SecondFrontSeconds, 0.01);
    }

    // A window of 8 s has room for no more than two whole pairs that come every 2.4 s.
    [Theory]
    [InlineData(120, 3, true)]
    [InlineData(120, 2, false)]
    [InlineData(60, 3, false)]
    public void TwoPairsAreEnoughWhereTheyComeMoreSlowlyThanAnyPulse(int period, int fronts, bool areFound)
    {
        var slopes = new double[420];
        List<double> rises = [];
        for (var k = 0; k < fronts; k++)
        {
            Add(slopes, rises, 30 + (k * period), 1, 5);
            Add(slopes, rises, 30 + (k * period) + (period / 3), 0.5, 5);
        }

        Assert.Equal(areFound, new PairFinder(BinRateHz).TryFind(slopes, rises.ToArray(), period / BinRateHz, out _));
    }

    // The one whose full beat lies before the window too.
    [Fact]
    public void TheWeakerOnesAreMarked()
    {
        Find(_ => Delay, out _, out var finder, out var rises);
        for (var k = 0; k < rises.Length; k++)
        {
            Assert.Equal((rises[k] - 30) % Period != 0, finder.IsSecond(k));
        }
    }

    // Breathing stretches intervals by a sixth either way, and the waves of each beat with them (respiratory sinus arrhythmia at rest: common practice).
    [Theory]
    [InlineData(0.4, 0.4, 0.4, true)]
    [InlineData(0.4, 0.25, 0.55, false)]
    public void WhatComesAtOneShareOfItsIntervalIsAPair(double shareOfShort, double shareOfUsual, double shareOfLong, bool areFound)
    {
        var slopes = new double[420];
        List<double> rises = [];
        var at = 20;
        foreach (var interval in (int[])[62, 62, 74, 86, 86])
        {
            Add(slopes, rises, at, 1, 5);
            Add(slopes, rises, at + (int)Math.Round(interval * (interval < 74 ? shareOfShort : interval > 74 ? shareOfLong : shareOfUsual)), 0.5, 5);
            at += interval;
        }

        Add(slopes, rises, at, 1, 5);
        Assert.Equal(areFound, new PairFinder(BinRateHz).TryFind(slopes, rises.ToArray(), 74 / BinRateHz, out _));
    }

    [Fact]
    public void WhatComesAtNoDelayOfItsOwnIsNoPair() => Assert.False(Find(k => 12 + (5 * (k % 6)), out _, out _, out _));

    // Four beats in the time of five (Wenckebach periods, 4:3: common practice): the period is that of two of them, but every second interval is another.
    [Theory]
    [InlineData(61, false)]
    [InlineData(41, true)]
    public void WhereEverySecondIntervalIsAnotherTheBeatsOfGroupsAreNoPairs(int other, bool areFound)
    {
        var slopes = new double[420];
        List<double> rises = [];
        for (var (at, k) = (20, 0); at < slopes.Length - 40; at += k++ % 2 == 0 ? 41 : other)
        {
            Add(slopes, rises, at, 1, 5);
            Bend(slopes, at + 9, -0.8, 8);
            Add(slopes, rises, at + 20, 0.67, 5);
            Bend(slopes, at + 29, -0.5, 8);
        }

        Assert.Equal(areFound, new PairFinder(BinRateHz).TryFind(slopes, rises.ToArray(), 41 / BinRateHz, out _));
    }

    [Theory]
    [InlineData(0.98, false)]
    [InlineData(1.02, true)]
    public void OfPairsWithALongerPeriodNothingIsAsked(double longestShare, bool areFound) =>
        Assert.Equal(areFound, Find(_ => Period / 3, out _, out _, out _, longestShare * Period / BinRateHz));

    private static bool Find(Func<int, int> delay, out RisePairs pairs, out PairFinder finder, out double[] rises, double longestSeconds = double.PositiveInfinity)
    {
        var slopes = new double[420];
        List<double> all = [];
        for (var k = -1; 30 + (k * Period) < slopes.Length - 10; k++)
        {
            var front = 30 + (k * Period);
            Add(slopes, all, front, 1, 5);
            Add(slopes, all, front + delay(k + 1), 0.5, 8);
        }

        rises = [.. all.Order()];
        finder = new(BinRateHz);
        return finder.TryFind(slopes, rises, Period / BinRateHz, out pairs, longestSeconds: longestSeconds);
    }

    private static void Add(double[] slopes, List<double> rises, int at, double height, double width)
    {
        if (at < 5 || at >= slopes.Length - 5)
        {
            return;
        }

        rises.Add(at);
        Bend(slopes, at, height, width);
    }

    private static void Bend(double[] slopes, int at, double height, double width)
    {
        for (var n = 0; n < slopes.Length; n++)
        {
            slopes[n] += height * Math.Exp(-0.5 * Math.Pow(2.355 * (n - at) / width, 2));
        }
    }
}
