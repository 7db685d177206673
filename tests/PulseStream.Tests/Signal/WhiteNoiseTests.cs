using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>White noise of the two lights, and what they have in common.</summary>
public sealed class WhiteNoiseTests
{
    private const double Ratio = 0.8;

    // Noise of variance 2 and 3 in infrared and red, and a pulse's fast waves of variance 5.
    [Fact]
    public void APulsesFastWavesAreNoNoise()
    {
        var noise = new WhiteNoise(2 + 5, 3 + (Ratio * Ratio * 5), Ratio * 5).WithoutPulse(Ratio);
        Assert.Equal(2, noise.Infrared, 1e-12);
        Assert.Equal(3, noise.Red, 1e-12);
        Assert.Equal(0, noise.Common);
    }

    [Theory]
    [InlineData(0.6, 0.8)]
    [InlineData(-2, 0.8)]
    [InlineData(2, 0)]
    public void WhatTheyHaveInCommonByChanceStays(double common, double ratio)
    {
        var noise = new WhiteNoise(2, 3, common);
        Assert.Equal(noise, noise.WithoutPulse(ratio));
    }
}
