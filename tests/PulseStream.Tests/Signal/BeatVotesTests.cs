using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Windows that hold the same seconds have to count the same beats in them.</summary>
public sealed class BeatVotesTests
{
    private const double BinRateHz = 50;
    private const int WindowSeconds = 8;
    private const double Doubtful = 20.95;

    [Fact]
    public void BeatsThatEveryWindowFindsAreSure() => Assert.All(Votes(_ => true), Assert.False);

    [Fact]
    public void ABeatThatOneWindowOverlooksIsSureWhenSixHaveSeenIt() => Assert.False(Votes(end => end != 23).Last());

    [Fact]
    public void ABeatThatHalfTheWindowsOverlookIsNotSure() => Assert.True(Votes(end => end % 2 == 0)[25]);

    [Fact]
    public void AWaveThatOneWindowSawAmongManyIsNone() => Assert.False(Votes(end => end == 23)[27]);

    [Fact]
    public void ABeatThatHasLeftTheWindowIsForgotten() => Assert.False(Votes(end => end % 2 == 0)[30]);

    [Fact]
    public void WhatLiesInAGapIsNoBeatOfTheirs()
    {
        var gaps = new BridgedGaps(BinRateHz);
        gaps.Add((long)(20.8 * BinRateHz), (long)(21.2 * BinRateHz));
        Assert.All(Votes(end => end % 2 == 0, gaps), Assert.False);
    }

    // Whether windows differ, by the second they end with: beats every 0.7 s, one of them at a time of its own.
    private static bool[] Votes(Func<int, bool> isSeen, BridgedGaps? gaps = null)
    {
        var votes = new BeatVotes(BinRateHz);
        var differ = new bool[36];
        for (var end = WindowSeconds; end < differ.Length; end++)
        {
            var from = end - WindowSeconds;
            var times = Enumerable.Range(0, 60).Select(k => 0.7 * k).Where(t => t < 20.7 || t > 21.1).ToList();
            if (isSeen(end))
            {
                times.Add(Doubtful);
                times.Sort();
            }

            double[] rises = [.. times.Where(t => t > from && t < end).Select(t => (t - from) * BinRateHz)];
            votes.Take(rises, from * BinRateHz, end * BinRateHz);
            differ[end] = votes.DifferBehind(from * BinRateHz, gaps ?? new(BinRateHz));
        }

        return differ;
    }
}
