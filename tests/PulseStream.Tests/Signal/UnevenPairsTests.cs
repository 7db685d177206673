using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Second waves of a heart that keeps no rhythm are told from beats by what they keep to.</summary>
public sealed class UnevenPairsTests
{
    private const double BinRateHz = 50;
    private static readonly int[] Uneven = [50, 38, 61, 44, 34, 56, 47, 40];
    private readonly UnevenPairs pairs = new(BinRateHz, new SignalOptions().LeastUnevenSpread);
    private readonly List<double> rises = [];
    private readonly double[] slopes = new double[450];

    [Theory]
    [InlineData(0.36, 0)]
    [InlineData(0, 14)]
    public void WhatKeepsToAShareOfTheIntervalOrToATimeIsASecondWave(double share, int bins)
    {
        Beat(Uneven, (_, interval) => (share * interval) + bins, _ => 0.5);
        Assert.True(Find());
        Assert.All(Enumerable.Range(0, rises.Count), k => Assert.Equal(slopes[(int)rises[k]] < 0.9, pairs.IsSecond(k)));
        Assert.Equal(Uneven.Average() / BinRateHz, pairs.IntervalSeconds, 1 / BinRateHz);
    }

    // Beats of a heart that flutters, one strong and one weak by chance: each comes when it likes.
    [Fact]
    public void WhatKeepsToNeitherIsABeat()
    {
        int[] delays = [14, 19, 22, 22, 11, 28, 14, 18];
        Beat(Uneven, (k, _) => delays[k], _ => 0.5);
        Assert.False(Find());
    }

    [Fact]
    public void WavesOfAnySteepnessAreBeats()
    {
        double[] heights = [0.5, 0.8, 0.36, 0.7, 0.4, 0.8, 0.55, 0.4];
        Beat(Uneven, (k, interval) => (0.36 * interval) + (k % 2 * 3), k => heights[k]);
        Assert.False(Find());
    }

    // A rhythm's pairs are told by their shape.
    [Fact]
    public void EvenIntervalsTellNothing()
    {
        Beat([47, 48, 47, 49, 47, 48, 47, 48], (_, interval) => 0.36 * interval, _ => 0.5);
        Assert.False(Find());
        Assert.True(Find(isKnown: true));
    }

    // The next beat is the nearer one: early beats behind full ones come so.
    [Fact]
    public void WhatComesBeyondTheMiddleIsNoSecondWave()
    {
        Beat(Uneven, (_, interval) => 0.55 * interval, _ => 0.5);
        Assert.False(Find());
    }

    // Strong and weak beats in turn, as a heart that flutters has them for a while: the weak ones rise from the foot, as short as the strong.
    [Fact]
    public void WhatRisesFromTheFootIsABeat()
    {
        Beat(Uneven, (_, interval) => 0.42 * interval, _ => 0.62, width: 3, falls: 0.6, frontWidth: 3);
        Assert.False(Find());
    }

    // Four beats in the time of five (Wenckebach periods, 4:3: common practice), the first after the pause the steepest: no two of them in turn are one.
    [Fact]
    public void BeatsOfGroupsAreAsLikelyAsSecondWaves()
    {
        Beat([41, 61, 40, 60, 41, 60, 41], (k, _) => k % 2 == 0 ? 21 : 20, _ => 0.67, width: 5.5, falls: 0.4);
        Assert.True(Find());
        Assert.True(pairs.MayBeOfGroups);
    }

    [Fact]
    public void FlatSecondWavesAreNoBeatsOfGroups()
    {
        Beat(Uneven, (_, interval) => 0.4 * interval, _ => 0.45);
        Assert.True(Find());
        Assert.False(pairs.MayBeOfGroups);
    }

    [Fact]
    public void ARippleBesideASecondWaveIsNoBeat()
    {
        Beat(Uneven, (_, interval) => 0.36 * interval, _ => 0.5);
        Add(rises[4] + 28, 0.1, 5);
        rises.Sort();
        Assert.True(Find());
        Assert.All(Enumerable.Range(0, rises.Count), k => Assert.Equal(slopes[(int)rises[k]] < 0.9, pairs.IsSecond(k)));
    }

    // Where the interval is so short that its second wave merges with the next front.
    [Fact]
    public void ABeatInThreeMayHaveNone()
    {
        Beat(Uneven, (k, interval) => k % 3 == 1 ? double.NaN : 0.36 * interval, _ => 0.5);
        Assert.True(Find());
        Assert.All(Enumerable.Range(0, rises.Count), k => Assert.Equal(slopes[(int)rises[k]] < 0.9, pairs.IsSecond(k)));
    }

    private bool Find(bool isKnown = false) => pairs.TryFind(slopes, rises.ToArray(), isKnown);

    private void Beat(int[] intervals, Func<int, int, double> delay, Func<int, double> height, double width = 8, double falls = 0, double frontWidth = 5)
    {
        var at = 20.0;
        for (var k = 0; k < intervals.Length; k++)
        {
            Add(at, 1, frontWidth);
            Bend(at + 9, -falls * frontWidth / 5, 8);
            if (!double.IsNaN(delay(k, intervals[k])))
            {
                var second = at + Math.Round(delay(k, intervals[k]));
                Add(second, height(k), width);
                Bend(second + 9, -falls * height(k) * frontWidth / 5, 8);
            }

            at += intervals[k];
        }

        Add(at, 1, 5);
    }

    private void Add(double at, double height, double width)
    {
        rises.Add(at);
        Bend(at, height, width);
    }

    private void Bend(double at, double height, double width)
    {
        for (var n = 0; n < slopes.Length; n++)
        {
            slopes[n] += height * Math.Exp(-0.5 * Math.Pow(2.355 * (n - at) / width, 2));
        }
    }
}
