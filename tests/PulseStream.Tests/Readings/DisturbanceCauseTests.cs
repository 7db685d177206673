using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A lamp that a pulse was told from stays a lamp.</summary>
public sealed class DisturbanceCauseTests
{
    private const double LineHz = 1.2;
    private static readonly CalmPulse OfTheLinesRate = new(Math.Log(0.01), 0.8, 1 / LineHz);

    // All of what a pulse was told from could have been taken away as one line, even the pulse's own rate's.
    [Theory]
    [InlineData(0.9995, true, Reasons.AmbientLight | Reasons.Motion)]
    [InlineData(0.99, true, Reasons.Motion)]
    [InlineData(0.9995, false, Reasons.Motion)]
    public void WhatOneLineExplainsMayBeALampThoughThePulseWasToldFromItAsMovement(double explains, bool wasPureLine, Reasons reasons)
    {
        var fit = new RatioFit { IsSeparated = true, WindowSeconds = 8, LineHz = LineHz, LinesExplain = explains, WasPureLine = wasPureLine };
        Assert.Equal(reasons, Cause().OfDisagreement(At(20, fit), OfTheLinesRate));
    }

    // A window of eight seconds holds some of a second that was believed beside a lamp.
    [Theory]
    [InlineData(27, Reasons.AmbientLight | Reasons.Motion)]
    [InlineData(28, Reasons.Motion)]
    public void ALampThatASecondWasReadBesideIsInTheSecondsAfterIt(int second, Reasons reasons)
    {
        var cause = Cause();
        cause.Tell(At(20, new RatioFit { Lines = 1, IsPureLine = true }));
        Assert.Equal(reasons, cause.OfDisagreement(At(second, new RatioFit { WindowSeconds = 8 }), CalmPulse.Unknown));
    }

    // Nothing of that second is in the next finger's window.
    [Fact]
    public void ALampThatASecondOfAFormerFingerWasReadBesideIsForgottenWithIt()
    {
        var cause = Cause();
        cause.Tell(At(20, new RatioFit { Lines = 1, IsPureLine = true }));
        cause.Forget();
        Assert.Equal(Reasons.Motion, cause.OfDisagreement(At(22, new RatioFit { WindowSeconds = 8 }), CalmPulse.Unknown));
    }

    private static DisturbanceCause Cause()
    {
        var options = new JudgeOptions();
        var light = new CalmLight(options);
        light.Settle(At(10, default));
        return new(options, light, new LeaptLight(options));
    }

    private static SignalSecond At(int second, in RatioFit fit) =>
        new(second, new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.01, 1e-4), fit, new WindowPulse { Periodicity = 0.5 }, false);
}
