using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>A time twice as long in turn with a usual one, as a beat that is not seen leaves it.</summary>
public sealed class TwiceAsLongTests
{
    // Every third beat early at any coupling, the time to the next making good for it (common practice: a full compensatory pause).
    [Fact]
    public void TwoBeatsAndAPauseForTwoAreInTurn() => Assert.True(TwiceAsLong.AreInTurn([20, 45, 95, 120, 170, 195]));

    [Fact]
    public void ThePauseMayComeFirst() => Assert.True(TwiceAsLong.AreInTurn([45, 95, 120, 170, 195]));

    // An early beat at 0.8 of an interval, and the rest of two.
    [Fact]
    public void APauseThatIsHalfAsLongAgainIsNone() => Assert.False(TwiceAsLong.AreInTurn([20, 60, 120, 160, 220, 260]));

    [Fact]
    public void OneThatComesOnceIsNotInTurn() => Assert.False(TwiceAsLong.AreInTurn([20, 45, 95, 120, 145, 170]));

    [Fact]
    public void EvenBeatsHaveNone() => Assert.False(TwiceAsLong.AreInTurn([20, 60, 100, 140, 180, 220]));

    [Fact]
    public void ThreeIntervalsAreTooFew() => Assert.False(TwiceAsLong.AreInTurn([20, 45, 95, 120]));
}
