using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What the width of a rise, beside that of the full beat before it, tells of a weak beat and of a second wave.</summary>
public sealed class WeakRiseWidthTests
{
    private const double BinRateHz = 50;
    private const int Length = 400;
    private const int Interval = 69;

    // A full beat of bigeminy stays up for 0.2 s; its front is over in 0.13, so that no second wave comes as late as this.
    [Fact]
    public void ACrestThatStaysUpHidesNoWeakBeat()
    {
        var left = Left(new(FrontBins: 6.5, Delay: 27, WeakShare: 0.5, WeakBins: 5.5) { PlateauBins = 10 }, out var rises, out _);
        Assert.Equal(rises.Length, left.Length);
    }

    [Fact]
    public void TheSecondWaveOfASlowFrontComesAsMuchLater()
    {
        var left = Left(new(FrontBins: 11.5, Delay: 34, WeakShare: 0.36, WeakBins: 8) { PlateauBins = 10 }, out var rises, out _);
        Assert.True(left.Length <= (rises.Length + 1) / 2);
    }

    // A pause draws the second wave out; a beat is over as fast as others are.
    [Theory]
    [InlineData(5, true)]
    [InlineData(11, false)]
    public void WhatRisesLateIsABeatUnlessItIsDrawnOut(double weakBins, bool isBeat)
    {
        var left = Left(new(FrontBins: 5, Delay: 29, WeakShare: 0.36, WeakBins: weakBins) { IsOnce = true }, out var rises, out _);
        Assert.Equal(isBeat ? rises.Length : rises.Length - 1, left.Length);
    }

    // Every beat falls steeply at that delay: the difference alone would make a beat of a ripple.
    [Theory]
    [InlineData(0.26, true)]
    [InlineData(0.17, false)]
    public void ARippleThatComesOnceIsNoBeatHoweverSteeplyOthersFall(double share, bool isBeat)
    {
        var left = Left(new(FrontBins: 5, Delay: 18, WeakShare: share, WeakBins: 4) { IsOnce = true, FallShare = 0.25 }, out var rises, out _);
        Assert.Equal(isBeat ? rises.Length : rises.Length - 1, left.Length);
    }

    // Too high a foot for a beat and too soon for one, but narrower than its beat's front, which no second wave so late is.
    [Theory]
    [InlineData(3.5, true)]
    [InlineData(5.5, false)]
    public void ANarrowWaveThatComesAgainAndAgainMayBeABeat(double weakBins, bool isDoubtful)
    {
        var left = Left(new(FrontBins: 4, Delay: 20, WeakShare: 0.55, WeakBins: weakBins), out var rises, out var weak);
        Assert.True(left.Length < rises.Length);
        Assert.Equal(isDoubtful, weak.IsDoubtful);
    }

    private static double[] Left(Pulse pulse, out double[] all, out WeakRises weak)
    {
        var slopes = new double[Length];
        var rises = new List<double>();
        for (var front = 30; front < Length - 20; front += Interval)
        {
            var hasWeak = !pulse.IsOnce || front == 30 + (2 * Interval);
            Array.ForEach([.. Enumerable.Range(front - 20, Interval)], n => slopes[Math.Min(n, Length - 1)] += pulse.SlopeAt(n - front, hasWeak));
            rises.AddRange(hasWeak && front + pulse.Delay < Length - 20 ? [front, front + pulse.Delay] : [front]);
        }

        weak = new WeakRises(BinRateHz);
        all = [.. rises];
        double[] room = [.. rises];
        return room[..weak.Drop(slopes, room, Interval / BinRateHz)];
    }

    private sealed record Pulse(double FrontBins, int Delay, double WeakShare, double WeakBins)
    {
        public int PlateauBins { get; init; }

        public bool IsOnce { get; init; }

        public double FallShare { get; init; } = 0.06;

        // Bins since the front: it, what stays up behind it, the fall, and the weak rise in it.
        public double SlopeAt(int bins, bool hasWeak)
        {
            var weak = hasWeak ? (WeakShare + FallShare) * Bell(bins - Delay, WeakBins) : 0;
            var rest = bins < -FrontBins ? 0 : bins <= PlateauBins ? 0.02 : bins < FrontBins ? 0 : -FallShare;
            return Bell(bins, FrontBins) + rest + weak;
        }

        private static double Bell(double bins, double width) => Math.Exp(-0.5 * Math.Pow(2.355 * bins / width, 2));
    }
}
