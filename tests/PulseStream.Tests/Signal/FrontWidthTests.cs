using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>The width of a front, whatever follows it.</summary>
public sealed class FrontWidthTests
{
    private const int Length = 60;

    // A bell's full width at half of its height is 2.355 of its standard deviations.
    [Theory]
    [InlineData(2.0)]
    [InlineData(3.5)]
    public void ABellIsAsWideAsAtHalfItsHeight(double deviation) =>
        Assert.Equal(2.355 * deviation, FrontWidth.BinsOf(Bell(deviation, _ => 0), 30), 0.05);

    [Fact]
    public void WhatRisesSlowlyBehindAFrontDoesNotWidenIt() =>
        Assert.Equal(2.355 * 2, FrontWidth.BinsOf(Bell(2, n => n > 34 ? 0.2 : 0), 30), 0.05);

    [Fact]
    public void AFrontBeforeTheWindowHasNone() => Assert.Equal(0, FrontWidth.BinsOf(Bell(2, _ => 0), double.NegativeInfinity));

    private static double[] Bell(double deviation, Func<int, double> rest) =>
        [.. Enumerable.Range(0, Length).Select(n => Math.Exp(-0.5 * Math.Pow((n - 30) / deviation, 2)) + rest(n))];
}
