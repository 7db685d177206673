using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What a steady wave has in a window, against plain sums.</summary>
public sealed class WavePowerTests
{
    private const double Tolerance = 1e-9;

    [Theory]
    [InlineData(0.7, 8)]
    [InlineData(1, 6)]
    [InlineData(1.005, 8)]
    [InlineData(2.5, 4)]
    public void WhatTheSlowPartLeavesOfAWaveIsWhatTakingItAwayLeaves(double hz, int seconds)
    {
        var design = new SignalDesign(new(100), new());
        var slow = design.SlowOf(seconds);
        var turn = 2 * Math.PI * hz / design.BinRateHz;
        var pairs = new double[2 * slow.Length];
        for (var n = 0; n < slow.Length; n++)
        {
            (pairs[(2 * n) + 1], pairs[2 * n]) = Math.SinCos(turn * (n - ((slow.Length - 1) / 2.0)));
        }

        var whole = RatioSums.Over(pairs);
        Assert.Equal(whole.Infrared, WavePower.Of(turn, slow.Length).Cosine, Tolerance);
        Assert.Equal(whole.Red, WavePower.Of(turn, slow.Length).Sine, Tolerance);
        slow.Remove(pairs);
        var left = RatioSums.Over(pairs);
        Assert.Equal(left.Infrared, WavePower.LeftBy(turn, slow).Cosine, Tolerance);
        Assert.Equal(left.Red, WavePower.LeftBy(turn, slow).Sine, Tolerance);
    }
}
