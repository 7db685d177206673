using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>What lines tell of themselves by their frequencies.</summary>
public sealed class LinePartTests
{
    private const int WindowSeconds = 8;
    private const double PulsePeriodSeconds = 0.8;

    [Theory]
    [InlineData(true, 2.5)]
    [InlineData(true, 2.5, 2.6)]
    [InlineData(false, 2.5, 5.0)]
    [InlineData(false, 1.95, 3.9, 5.85)]
    public void LinesOfOneFrequencyAreOne(bool isOne, params double[] hertz) =>
        Assert.Equal(isOne, LinePart.IsOneLine(hertz, WindowSeconds, PulsePeriodSeconds));

    [Fact]
    public void LightThatWasWeighedInOneWindowIsNotInTheNext()
    {
        const double hz = 3.3;
        var design = new SignalDesign(new(100), new());
        var basis = design.SlowOf(8);
        var (used, fresh) = (new LineRemover(design), new LineRemover(design));
        var pairs = Enumerable.Range(0, 2 * basis.Length).Select(n => Math.Sin(2 * Math.PI * hz * (n / 2) / design.BinRateHz) + (n % 7)).ToArray();
        var others = pairs.ToArray();
        used.Restart(basis);
        used.Weigh(pairs);
        used.Restart(basis);
        used.RemoveAlone(pairs, [hz], isWide: false);
        fresh.Restart(basis);
        fresh.RemoveAlone(others, [hz], isWide: false);
        Assert.Equal(others, pairs);
    }

    [Fact]
    public void WhatIsSlowerThanThePulseIsBreathing() =>
        Assert.True(LinePart.IsOneLine([2.5, 0.9], WindowSeconds, PulsePeriodSeconds));

    [Fact]
    public void ALineAloneLeavesAPulseItsFirstWave()
    {
        var design = new SignalDesign(new(100), new());
        var basis = design.SlowOf(WindowSeconds);
        var window = new double[2 * basis.Length];
        for (var n = 0; n < basis.Length; n++)
        {
            window[2 * n] = First(n) + Math.Cos(2 * Angle(n));
            window[(2 * n) + 1] = First(n) + (0.4 * Math.Cos(2 * Angle(n)));
        }

        basis.Remove(window);
        var lines = new LineRemover(design);
        lines.Restart(basis);
        lines.RemoveAlone(window, [2 / PulsePeriodSeconds], isWide: false);
        var left = 0.0;
        for (var n = 0; n < basis.Length; n++)
        {
            left += window[2 * n] * First(n);
        }

        // Drift and bend of the line, and the baseline, cost a tenth of it; what rides on the pulse would cost half.
        Assert.InRange(left / basis.Length, 0.45, 0.5);

        double Angle(int n) => 2 * Math.PI * n / design.BinRateHz / PulsePeriodSeconds;
        double First(int n) => Math.Sin(Angle(n));
    }
}
