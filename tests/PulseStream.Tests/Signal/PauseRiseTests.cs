using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>The early beat that moved little blood, before the pause that follows it.</summary>
public sealed class PauseRiseTests
{
    private const double BinRateHz = 50;
    private const int Interval = 40;

    [Fact]
    public void WhatRisesInAPauseIsAnEarlyBeat() => Assert.Equal(4, Find(weak: 0.15, usual: 0));

    [Fact]
    public void ASecondWaveThatOthersHaveTooIsNone() => Assert.Equal(-1, Find(weak: 0.15, usual: 0.12));

    [Fact]
    public void ARippleIsNone() => Assert.Equal(-1, Find(weak: 0.05, usual: 0));

    [Fact]
    public void WithoutAPauseThereIsNone() => Assert.Equal(-1, Find(weak: 0.15, usual: 0, pause: 55));

    // A pause behind each second beat is a rhythm: bigeminy whose early beats were found.
    [Fact]
    public void WherePausesAreUsualTheyHideNothing() => Assert.Equal(-1, Find(weak: 0.15, usual: 0, every: 2));

    // Seven full beats, the interval after the fourth, or after each second one, longer; a weak rise 0.44 s into it.
    private static int Find(double weak, double usual, int pause = 2 * Interval, int every = 7)
    {
        const int delay = 22;
        const int paused = 3;
        var slopes = new double[500];
        var rises = new List<double>();
        var isFull = new List<bool>();
        var at = 20;
        for (var k = 0; k < 7; k++)
        {
            slopes[at] = 1;
            slopes[at + delay] = k == paused ? weak : usual;
            rises.Add(at);
            isFull.Add(true);
            if (k == paused)
            {
                rises.Add(at + delay);
                isFull.Add(false);
            }

            at += k % every == paused % every ? pause : Interval;
        }

        return new PauseRise(BinRateHz).Find(slopes, [.. rises], [.. isFull], paused, Interval);
    }
}
