using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A lamp in a mixture of its own on one of the waves of a pulse that was never seen without it.</summary>
public sealed class LampBesidePulseTests
{
    private const double RateHz = 100;

    // The lamp's mean divides either pulse, by its amplitude at least, which is told from its swing; what the pulse's own wave adds to
    // that is told over some tens of beats.
    private const double PercentTolerance = 0.6;

    // On the first wave and nearly as tall as the pulse; and on the second of a slow and tall one, where its light bends the logarithm.
    [Theory]
    [InlineData(60, 1, 0.9, 1, 2.4, 0.45)]
    [InlineData(46, 9, 0.5, 2, 1.9, 0.9)]
    [InlineData(55, 2, 0.5, 2, 2.1, 0.6)]
    [InlineData(55, 9, 1.4, 2, 0.3, 0.4)]
    public void ALampOnAWaveOfThePulseIsReadThroughByItsMixture(double pulsePerMinute, double perfusionPercent, double size, int wave, double mix, double leastShare)
    {
        var heard = Beside(pulsePerMinute, perfusionPercent, size, wave, mix);
        var later = heard.Usable.Where(s => s.SecondIndex >= 12).ToArray();
        Assert.InRange(later.Length, leastShare * 78, 78);
        Assert.All(later, s => Assert.Equal(97, s.Spo2!.Value.Percent, PercentTolerance));
        Assert.All(later, s => Assert.Equal(pulsePerMinute, s.PulseRatePerMinute ?? pulsePerMinute, 0.16 * pulsePerMinute));
    }

    [Theory]
    [InlineData(60, 1, 0.9, 1, 2.4)]
    [InlineData(46, 9, 0.5, 2, 1.9)]
    [InlineData(106, 0.7, 0.3, 1, 1.7)]
    [InlineData(55, 9, 1.4, 2, 0.3)]
    public void WhatIsRefusedBesideALampNamesIt(double pulsePerMinute, double perfusionPercent, double size, int wave, double mix)
    {
        var refused = Beside(pulsePerMinute, perfusionPercent, size, wave, mix).Seconds.Select(s => s.Unusable).OfType<UnusableSecond>().Where(s => s.SecondIndex >= 8).ToArray();
        var named = refused.Count(s => s.Reasons.HasFlag(Reasons.AmbientLight));
        Assert.InRange(named, 0.9 * refused.Length, refused.Length);
    }

    // Beats that vary by some hundredths, as a heart's do: each wave wanders against a lamp that does not.
    private static Heard Beside(double pulsePerMinute, double perfusionPercent, double size, int wave, double mix)
    {
        double Beats(double t) => (pulsePerMinute / 60 * t) + (0.14 * Math.Sin((0.31 * t) + 1)) + (0.09 * Math.Sin(0.83 * t)) + (0.02 * Math.Sin(2.3 * t));
        double Lamp(double t) => size * perfusionPercent / 200 * (1 + Math.Sin((2 * Math.PI * wave * pulsePerMinute / 60 * t) + 2));
        var finger = new Finger { Seconds = 90, PerfusionPercent = perfusionPercent, Blood = t => Finger.Volume(Beats(t)) };
        return Heard.Of(RateHz, finger.Samples().With(RateHz, t => (60_000 * mix * Lamp(t), 80_000 * Lamp(t))));
    }
}
