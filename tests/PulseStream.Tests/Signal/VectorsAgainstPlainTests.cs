using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Two lights at once give to the last bit what one after the other gives (<see cref="PlainSums"/>).</summary>
public sealed class VectorsAgainstPlainTests
{
    // Largest difference in units in the last place: both are within one of the true value.
    private const int LogarithmUnits = 2;
    private static readonly SignalDesign Design = new(new SampleRate(100), new());

    [Theory]
    [InlineData(50)]
    [InlineData(100)]
    [InlineData(250)]
    public void SmoothingIsThePlainSum(double hz)
    {
        var kernel = new SignalDesign(new SampleRate(hz), new()).Kernel;
        var (infrared, red) = Lights(kernel.Taps.Length);
        var smooth = kernel.Smooth(Pairs(infrared, red));
        Assert.Equal(PlainSums.Smooth(kernel.Taps, infrared), smooth[0]);
        Assert.Equal(PlainSums.Smooth(kernel.Taps, red), smooth[1]);
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(7, true)]
    [InlineData(8, false)]
    [InlineData(8, true)]
    public void TheSlowPartIsThePlainOne(int seconds, bool isFastPulse)
    {
        var basis = Design.SlowOf(seconds, isFastPulse);
        var (infrared, red) = Lights(basis.Length);
        var pairs = Pairs(infrared, red);
        basis.Remove(MemoryMarshal.Cast<Vector128<double>, double>(pairs.AsSpan()));
        PlainSums.RemoveSlow(basis, infrared);
        PlainSums.RemoveSlow(basis, red);
        Assert.Equal(infrared, pairs.Select(pair => pair[0]));
        Assert.Equal(red, pairs.Select(pair => pair[1]));
    }

    [Theory]
    [InlineData(388)]
    [InlineData(389)]
    public void TheRegressionHasThePlainSums(int bins)
    {
        var (infrared, red) = Lights(bins);
        Assert.Equal(PlainSums.RatioSumsOver(infrared, red), RatioSums.Over(MemoryMarshal.Cast<Vector128<double>, double>(Pairs(infrared, red))));
    }

    [Fact]
    public void TheLogarithmIsThatOfTheRuntime()
    {
        var random = new Random(1);
        for (var n = 0; n < 100_000; n++)
        {
            // From one count to the product of sixteen lights.
            var light = Math.Exp(660 * random.NextDouble());
            var other = 1 + random.NextDouble();
            var found = NaturalLogarithm.Of(Vector128.Create(light, other));
            Assert.InRange(found[0], Down(Math.Log(light)), Up(Math.Log(light)));
            Assert.InRange(found[1], Down(Math.Log(other)), Up(Math.Log(other)));
        }

        Assert.Equal(0, NaturalLogarithm.Of(Vector128<double>.One)[0]);
        Assert.True(double.IsNaN(NaturalLogarithm.Of(Vector128.Create(double.NaN))[1]));
    }

    private static double Up(double x) => Enumerable.Range(0, LogarithmUnits).Aggregate(x, (y, _) => Math.BitIncrement(y));

    private static double Down(double x) => Enumerable.Range(0, LogarithmUnits).Aggregate(x, (y, _) => Math.BitDecrement(y));

    private static (double[] Infrared, double[] Red) Lights(int length)
    {
        var random = new Random(length);
        return ([.. Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.3)], [.. Enumerable.Range(0, length).Select(_ => random.NextDouble() - 0.6)]);
    }

    private static Vector128<double>[] Pairs(double[] infrared, double[] red) => [.. infrared.Zip(red, Vector128.Create)];
}
