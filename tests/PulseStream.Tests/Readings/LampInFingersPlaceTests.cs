using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A pulse of R 0.6 beside a lamp whose line is taken away; then a line on the pulse's own first wave is, and the lamp is left.</summary>
public sealed class LampInFingersPlaceTests
{
    [Theory]
    [InlineData(true, Reasons.Motion | Reasons.Misplaced | Reasons.AmbientLight)]
    [InlineData(false, Reasons.Motion | Reasons.Misplaced)]
    public void WhatIsLeftInThePulsesPlaceMayBeTheLampThatWasJustTold(bool wasLamp, Reasons reasons)
    {
        var judge = new SecondJudge(CalibrationCurve.TextbookLine, new(), hasRed: true);
        for (var second = 9; second < 20; second++)
        {
            Assert.True(judge.Judge(At(second, 0.6, 0.2, 0)).IsUsable);
        }

        Assert.True(judge.Judge(At(20, 0.6, 0.2, wasLamp ? 1 : 0)).IsUsable);
        Assert.Equal(reasons, judge.Judge(At(21, 0.9, 0.005, 3)).Unusable?.Reasons);
    }

    // The third harmonic of a pulse of 190 a minute lies beyond the smoothing.
    [Theory]
    [InlineData(0.007, true)]
    [InlineData(0.014, false)]
    public void BloodThatChangesAtOnceKeepsItsPlaceByHeightRateAndLight(double size, bool isUsable)
    {
        var judge = new SecondJudge(CalibrationCurve.TextbookLine, new(), hasRed: true);
        for (var second = 9; second < 20; second++)
        {
            Assert.True(judge.Judge(At(second, 0.6, 0.011, 0, perMinute: 190)).IsUsable);
        }

        Assert.Equal(isUsable, judge.Judge(At(20, 0.9, 0.011, 0, size, 190)).IsUsable);
    }

    private static SignalSecond At(int second, double ratio, double third, int lines, double size = 0.007, double perMinute = 72)
    {
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.005, 1e-4);
        var fit = new RatioFit(8, ratio, 0.003, 0, size, 1e-4, false, 0, lines, false, 0, default, IsOneLine: lines > 0, IsPureLine: lines == 1, LineHz: lines > 0 ? 1.2 : 0, LinesExplain: lines > 0 ? 0.99 : 0);
        var pulse = new WindowPulse(9, perMinute, 0, 0.01, 0.97, 60 / perMinute, 0.99, 1, 0.5, third, double.NaN, double.NaN, 2, 2);
        return new(second, light, fit, pulse, false);
    }
}
