using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Readings;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>A window in which the blood changes, and one in which something begins to move.</summary>
public sealed class ChangedBloodTests
{
    private const double Before = 0.5;
    private const double Behind = 0.8;
    private static readonly SignalDesign Design = new(new SampleRate(50), new());
    private static readonly SlowBasis Basis = Design.SlowOf(8, SlowEdge.OfFastPulse);
    private static readonly WhiteNoise Noise = new(1e-10, 1e-10, 0);

    [Theory]
    [InlineData(2.5, 0)]
    [InlineData(4, 0)]
    [InlineData(5.2, 0.8)]
    [InlineData(5.7, 0)]
    public void TheNewestRatioIsReadBehindAChange(double atSeconds, double widthSeconds)
    {
        var pairs = Window(t => Before + ((Behind - Before) * Change(t, atSeconds, widthSeconds)), _ => default);
        Assert.True(TryRead(pairs, out var whole, out var changed));
        Assert.True(whole.Disagreement > 0.05);
        Assert.Equal(Behind, changed.Ratio, 0.012);
        Assert.InRange(changed.StandardError, 0, 0.01);
        Assert.InRange(RatioRegression.Fit(pairs, Noise, Design.Kernel.NoiseGain, Basis.Count, 8).Disagreement, 0, Design.Options.ChangedDisagreement);
    }

    // The light of a perfusion of 2 % is moved by a tenth of the pulse and by more, in another mixture, from some time on.
    [Theory]
    [InlineData(0.001, 1.6)]
    [InlineData(0.005, 1.6)]
    [InlineData(0.02, 1.6)]
    [InlineData(0.005, 0)]
    public void WhatMovesLeavesSomethingOver(double size, double mixture)
    {
        var pairs = Window(_ => Before, t =>
        {
            var light = t < 4.3 ? 0 : size * (Math.Sin(2 * Math.PI * 1.9 * t) + Math.Sin((2 * Math.PI * 3.1 * t) + 1));
            return (light, mixture * light);
        });
        Assert.False(TryRead(pairs, out _, out _));
    }

    // Nothing is left of a change whose beginning or end is not in the window.
    [Fact]
    public void AChangeOfWhichHardlyAnythingIsSeenYetIsNotRead() =>
        Assert.False(TryRead(Window(t => Before + ((Behind - Before) * Change(t, 7.2, 0)), _ => default), out _, out _));

    // What moves with the heart, in a mixture of its own, takes from its pulse or adds to it.
    [Theory]
    [InlineData(1.1, true)]
    [InlineData(1.4, false)]
    [InlineData(0.7, false)]
    public void NoBloodChangesInfraredsPulse(double growth, bool isRead) =>
        Assert.Equal(isRead, TryRead(Window(t => Before + ((Behind - Before) * Change(t, 4, 0)), _ => default, t => 1 + ((growth - 1) * Change(t, 4, 0))), out _, out _));

    private static double Change(double t, double at, double width) => width > 0 ? Math.Clamp(((t - at) / width) + 0.5, 0, 1) : t < at ? 0 : 1;

    private static bool TryRead(double[] pairs, out RatioFit whole, out RatioFit changed)
    {
        whole = RatioRegression.Fit(pairs, Noise, Design.Kernel.NoiseGain, Basis.Count, 8);
        return new ChangedBlood(Design).TryRead(pairs, Basis, Noise, whole, out changed);
    }

    private static double[] Window(Func<double, double> ratio, Func<double, (double Infrared, double Red)> movement, Func<double, double>? height = null)
    {
        var random = new Random(3);
        var pairs = new double[2 * Basis.Length];
        for (var n = 0; n < Basis.Length; n++)
        {
            var t = n / Design.BinRateHz;
            var pulse = 0.02 * (height?.Invoke(t) ?? 1) * Finger.Volume((t * 74 / 60) + 0.3);
            var moved = movement(t);
            pairs[2 * n] = moved.Infrared - pulse + (5e-6 * (random.NextDouble() - 0.5));
            pairs[(2 * n) + 1] = moved.Red - (ratio(t) * pulse) + (5e-6 * (random.NextDouble() - 0.5));
        }

        Basis.Remove(pairs);
        return pairs;
    }
}
