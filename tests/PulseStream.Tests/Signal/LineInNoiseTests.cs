using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>A steady line leaks into what smoothing takes away, from which white noise is read.</summary>
public sealed class LineInNoiseTests
{
    private const double RateHz = 50;
    private static readonly SmoothingKernel Kernel = new(8, RateHz);

    [Theory]
    [InlineData(0)]
    [InlineData(1.5)]
    [InlineData(6.5)]
    [InlineData(11)]
    public void TheGainIsWhatSmoothingLeavesOfAWave(double hz)
    {
        var wave = Wave(hz);
        var smoothed = Enumerable.Range(Kernel.Half, wave.Length - (2 * Kernel.Half))
            .Select(n => Enumerable.Range(-Kernel.Half, (2 * Kernel.Half) + 1).Sum(k => Kernel.Taps[k + Kernel.Half] * wave[n + k]));
        Assert.Equal(Kernel.GainAt(hz / RateHz), smoothed.Zip(wave.Skip(Kernel.Half), (s, w) => s * w).Sum() / wave.Skip(Kernel.Half).SkipLast(Kernel.Half).Sum(w => w * w), 1e-9);
    }

    [Fact]
    public void ALineIsTakenOutOfTheNoiseThatItPassedFor()
    {
        const double amplitude = 0.01;
        const double hz = 6.5;
        var gain = Kernel.GainAt(hz / RateHz);
        var rest = amplitude * (1 - gain);
        var own = new WhiteNoise(4e-8, 9e-8, 0);
        var leaked = rest * rest / 2 / Kernel.RestNoiseGain;
        var measured = new WhiteNoise(own.Infrared + leaked, own.Red + (1.44 * leaked), 1.2 * leaked);
        var line = amplitude * gain;
        var left = measured.WithoutLine((line, 0), (1.2 * line, 0), gain, Kernel.RestNoiseGain);
        Assert.Equal(own.Infrared, left.Infrared, 1e-12);
        Assert.Equal(own.Red, left.Red, 1e-12);
        Assert.Equal(0, left.Common, 1e-12);
    }

    private static double[] Wave(double hz) => [.. Enumerable.Range(0, 400).Select(n => Math.Cos(2 * Math.PI * hz * (n - 200) / RateHz))];
}
