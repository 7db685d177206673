using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>The two frequencies without which least is left, in whatever order they are seen.</summary>
public sealed class DeepestLinesTests
{
    [Theory]
    [InlineData(3, 1, 2)]
    [InlineData(1, 2, 3)]
    [InlineData(2, 1, 3)]
    [InlineData(1, 3, 2)]
    [InlineData(2, 3, 1)]
    [InlineData(3, 2, 1)]
    public void TheTwoDeepestAreKept(int first, int second, int third)
    {
        var deepest = new DeepestLines();
        foreach (var left in (int[])[first, second, third])
        {
            deepest.See(left, 10 * left);
        }

        Assert.Equal((1, 10), deepest.First);
        Assert.Equal((2, 20), deepest.Second);
    }

    [Fact]
    public void OfOneAloneThereIsNoSecond()
    {
        var deepest = new DeepestLines();
        deepest.See(1, 2.5);
        Assert.Equal((1, 2.5), deepest.First);
        Assert.Equal(double.PositiveInfinity, deepest.Second.Left);
        Assert.True(double.IsNaN(deepest.Second.Hz));
    }

    // A lamp thirty times the pulse at a frequency between two that are tried leaves more of itself there than the pulse is. Without the pulse's own
    // taller wave, which lies on one that is tried, both lights nearly have the lamp's mixture; closely looked at, they agree better without the lamp.
    [Fact]
    public void ALampBetweenTheFrequenciesThatAreTriedIsFoundBesideAPulseOnOneOfThem()
    {
        var design = new SignalDesign(new(100), new());
        const int seconds = 8;
        var basis = design.SlowOf(seconds);
        var step = 1.0 / seconds / 3;
        double OnGrid(int k) => 0.6 + (k * step);
        var lampHz = OnGrid(40) + (0.5 * step);
        var pairs = new double[2 * basis.Length];
        for (var n = 0; n < basis.Length; n++)
        {
            var t = n / design.BinRateHz;
            var lamp = 0.3 * Math.Sin(2 * Math.PI * lampHz * t);
            var other = 0.1 * Math.Sin(2 * Math.PI * OnGrid(120) * t);
            pairs[2 * n] = (0.01 * Math.Sin(2 * Math.PI * 1.2 * t)) + lamp + other;
            pairs[(2 * n) + 1] = (0.005 * Math.Sin(2 * Math.PI * 1.2 * t)) + (2 * lamp) + (0.5 * other);
        }

        basis.Remove(pairs);
        var lines = new LineRemover(design);
        lines.Restart(basis);
        Assert.True(lines.TryRemove(pairs, 0, 0.2));
        Assert.Equal(lampHz, lines.LineHz, 0.01);
    }
}
