using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Seconds in which a finger comes or goes.</summary>
public sealed class HandledFingerTests
{
    private const double PulseSize = 0.01;

    // What is left of a jerk in the window has to settle; a jerk that still goes on is a movement.
    [Theory]
    [InlineData(0.05, Reasons.Settling, Reasons.Settling | Reasons.Motion)]
    [InlineData(0.015, Reasons.Settling, Reasons.Settling)]
    [InlineData(0.05, Reasons.Saturated, Reasons.Saturated)]
    public void AJerkThatGoesOnIsMovement(double swing, Reasons reasons, Reasons expected) =>
        Assert.Equal(expected, Known().With(At(20, swing), reasons, FingerIn()));

    // Two seconds after air a finger may still be coming.
    [Fact]
    public void AJerkAfterAirIsAFingerThatComes()
    {
        var handled = Known();
        var presence = FingerIn();
        handled.With(At(20, 0.0001, 2), Reasons.NoFinger, presence);
        Assert.Equal(Reasons.NoFinger | Reasons.Motion, handled.With(At(21, 0.3), Reasons.Motion, presence));
        Assert.Equal(Reasons.NoFinger | Reasons.Motion | Reasons.Settling, handled.With(At(22, 0.04), Reasons.Settling, presence));
        Assert.Equal(Reasons.Settling, handled.With(At(23, 0.01), Reasons.Settling, presence));
        Assert.Equal(Reasons.Motion, handled.With(At(24, 0.3), Reasons.Motion, presence));
    }

    // Seconds that are believed are not told to it, and pass all the same.
    [Fact]
    public void AJerkLongAfterAirIsNoFingerThatComes()
    {
        var handled = Known();
        handled.With(At(20, 0.0001, 2), Reasons.NoFinger, FingerIn());
        Assert.Equal(Reasons.Motion, handled.With(At(100, 0.3), Reasons.Motion, FingerIn()));
    }

    // A jerk is in the size of its window.
    [Fact]
    public void AJerkIsComparedWithThePulseAsItWasBefore() =>
        Assert.Equal(Reasons.Settling | Reasons.Motion, Known().With(At(20, 0.04, pulseSize: 0.03), Reasons.Settling, FingerIn()));

    // Before a pulse is known, only what no pulse swings by is a jerk.
    [Theory]
    [InlineData(0.028, Reasons.Settling)]
    [InlineData(0.035, Reasons.Settling | Reasons.Motion)]
    public void TheNextFingerMayHaveATallerPulse(double swing, Reasons expected)
    {
        var handled = Known();
        handled.Forget();
        Assert.Equal(expected, handled.With(At(20, swing), Reasons.Settling, FingerIn()));
    }

    // A finger of 0.5 %, air, and one of 3 % that is put in and held still.
    [Fact]
    public void AFingerWithATallerPulseThanTheOneBeforeOnlyHasToSettle()
    {
        var finger = new Finger { PerfusionPercent = 0.5 };
        var heard = Heard.Of(100, [.. finger.Samples(), .. (finger with { Seconds = 15 }).Air(), .. (finger with { PerfusionPercent = 3 }).Samples()]);
        Assert.True(heard.ReasonsAt(40).HasFlag(Reasons.NoFinger));
        Assert.All(Enumerable.Range(46, 2), second => Assert.Equal(Reasons.Settling, heard.ReasonsAt(second)));
        Assert.DoesNotContain(Enumerable.Range(46, 28), second => (heard.ReasonsAt(second) & (Reasons.NoFinger | Reasons.Motion)) != Reasons.None);
    }

    // Twice as bright by the mean of the second alone, in which it has only begun to leave.
    [Fact]
    public void AJerkIntoAirIsAFingerThatLeaves() =>
        Assert.Equal(Reasons.NoFinger | Reasons.Motion, Known().With(At(20, 0.3, 2), Reasons.Motion, FingerIn()));

    private static HandledFinger Known()
    {
        var handled = new HandledFinger(new());
        handled.Remember(At(10, 0.01));
        return handled;
    }

    private static Presence FingerIn()
    {
        var presence = new Presence(new());
        presence.Remember(At(10, 0.01));
        return presence;
    }

    private static SignalSecond At(int second, double swing, double brightness = 1, double pulseSize = PulseSize)
    {
        var light = new SecondLight(0, 0, 80_000 * brightness, 60_000 * brightness, double.NaN, double.NaN, double.NaN, swing, 1e-4);
        var fit = new RatioFit(8, 0.8, 0.001, 0, pulseSize, 1e-4, false, 0, 0, false, 0, default);
        return new(second, light, fit, default, false);
    }
}
