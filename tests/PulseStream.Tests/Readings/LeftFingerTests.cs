using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Nothing of a finger that has left is said of the next.</summary>
public sealed class LeftFingerTests
{
    [Fact]
    public void TheNextFingerHasNoPeriodYet()
    {
        var calm = Known(isBesideLamp: false);
        Assert.True(calm.HasSamePeriod(At(11)));
        calm.Forget();
        Assert.False(calm.HasSamePeriod(At(11)));
    }

    [Fact]
    public void TheNextFingersBloodIsNotTheFormerOnes()
    {
        var calm = Known(isBesideLamp: false);
        Assert.False(calm.HasOtherRatio(At(11)));
        calm.Forget();
        Assert.True(calm.HasOtherRatio(At(11)));
    }

    [Fact]
    public void ALampThatTheFormerFingerWasReadBesideIsNotInTheNextOnesWindow()
    {
        var calm = Known(isBesideLamp: true);
        Assert.Equal(Reasons.Motion | Reasons.AmbientLight, calm.CauseOfDisagreement(At(12)));
        calm.Forget();
        Assert.Equal(Reasons.Motion, calm.CauseOfDisagreement(At(12)));
    }

    [Fact]
    public void TheLeapOfAFingersGoingIsNoLampToTheNext()
    {
        var calm = Known(isBesideLamp: false);
        var going = At(12);
        calm.See(going with { Fit = going.Fit with { Leap = 0.9 } });
        Assert.Equal(Reasons.Motion | Reasons.AmbientLight, calm.WithLamp(At(13), Reasons.Motion));
        calm.Forget();
        Assert.Equal(Reasons.Motion, calm.WithLamp(At(13), Reasons.Motion));
    }

    private static CalmFinger Known(bool isBesideLamp)
    {
        var calm = new CalmFinger(new(), hasRed: true);
        var second = At(10);
        calm.See(second);
        calm.Tell(second with { Fit = second.Fit with { IsPureLine = isBesideLamp } });
        calm.Remember(second);
        return calm;
    }

    private static SignalSecond At(int second)
    {
        var light = new SecondLight(0, 0, 80_000, 60_000, double.NaN, double.NaN, double.NaN, 0.01, 1e-4);
        var fit = new RatioFit(8, 0.8, 0.001, 0, 0.01, 1e-4, false, 0, 0, false, 0, default);
        return new(second, light, fit, new WindowPulse { PeriodSeconds = 0.8, Periodicity = 0.5 }, false);
    }
}
