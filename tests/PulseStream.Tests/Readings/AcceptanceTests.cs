using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>Five seconds of one whole percent make a reading, where they know it to a point.</summary>
public sealed class AcceptanceTests
{
    [Theory]
    [InlineData(0.9, 0.9, 4)]
    [InlineData(0.1, 1.2, null)]
    [InlineData(1.2, 0.1, null)]
    [InlineData(double.NaN, double.NaN, 4)]
    public void AValueIsAcceptedWhereItsIntervalReachesNoFurtherThanAPoint(double below, double above, int? acceptedAt)
    {
        var heard = Told(Enumerable.Repeat((below, above), 10));
        Assert.Equal((long?)acceptedAt, heard.Readings.SingleOrDefault()?.SecondIndex);
    }

    // The mean of the last five: 1.2 twice and 0.8 three times is 0.96.
    [Fact]
    public void AValueThatHeldWhileItWasPoorlyKnownIsAcceptedOnceItIsKnown()
    {
        var heard = Told(Enumerable.Repeat((1.2, 1.2), 6).Concat(Enumerable.Repeat((0.8, 0.8), 6)));
        var reading = Assert.Single(heard.Readings);
        Assert.Equal(8, reading.SecondIndex);
        Assert.Equal(9, reading.HeldSeconds);
    }

    [Fact]
    public void TheSecondsToGoStayAtOneWhileAValueIsPoorlyKnown()
    {
        var heard = new Heard();
        var keeper = new ReadingKeeper(new());
        for (var second = 0; second < 8; second++)
        {
            keeper.Take(Second(second, 1.5, 1.5), hasFinger: true, heard);
            Assert.Equal(Math.Min(second + 1, 4), keeper.SteadySeconds);
        }
    }

    // One second that counts half of the beats, among four that doubt it, says nothing.
    [Theory]
    [InlineData(null, null, null, 35, null, null)]
    [InlineData(70, null, null, 35, null, null)]
    [InlineData(70, null, 71, 35, null, 70)]
    [InlineData(70, 70, 71, 71, 72, 71)]
    public void APulseThatFewSecondsTellIsNoneOfTheReading(int? a, int? b, int? c, int? d, int? e, int? told)
    {
        var heard = new Heard();
        var keeper = new ReadingKeeper(new());
        foreach (var (index, rate) in new[] { a, b, c, d, e }.Index())
        {
            keeper.Take(Second(index, 0.1, 0.1, rate), hasFinger: true, heard);
        }

        Assert.Equal(told, Assert.Single(heard.Readings).PulseRatePerMinute);
    }

    private static Heard Told(IEnumerable<(double Below, double Above)> widths)
    {
        var heard = new Heard();
        var keeper = new ReadingKeeper(new());
        foreach (var (index, width) in widths.Index())
        {
            keeper.Take(Second(index, width.Below, width.Above), hasFinger: true, heard);
        }

        return heard;
    }

    private static Second Second(long index, double below, double above, double? rate = 70) =>
        new UsableSecond(index, new Saturation(94.2, 94.2 - below, 94.2 + above), rate, 2, Reasons.None);
}
