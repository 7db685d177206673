using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;
using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Bins that are averaged and smoothed together are what they are one by one, through gaps and for hours.</summary>
public sealed class SmoothedBinsTests
{
    private const double Hz = 100;
    private const int BinsPerSecond = 50;
    private static readonly SignalDesign Design = new(new SampleRate(Hz), new());

    [Theory]
    [InlineData(1)]
    [InlineData(7)]
    [InlineData(32)]
    [InlineData(50)]
    public void BinsPushedTogetherAreSmoothedAsOneByOne(int together)
    {
        const int seconds = 1000;
        var (one, other) = (new SmoothedBins(Design), new SmoothedBins(Design));
        var random = new Random(together);
        for (var second = 0; second < seconds; second++)
        {
            // Now and then a second has none of its bins, or the half of them.
            var count = random.Next(10) switch { 0 => 0, 1 => BinsPerSecond / 2, _ => BinsPerSecond };
            var lights = Enumerable.Range(0, count).Select(_ => Vector128.Create(11 + random.NextDouble(), 12 + random.NextDouble())).ToArray();
            var first = (long)second * BinsPerSecond;
            for (var n = 0; n < count; n++)
            {
                one.Push(new(first + n, lights[n]));
                one.Smooth();
            }

            for (var n = 0; n < count; n += together)
            {
                other.Push(first + n, lights.AsSpan(n, Math.Min(together, count - n)));
            }

            other.Smooth();
            AssertSame(one, other);
            one.EndSecond();
            other.EndSecond();
        }
    }

    [Fact]
    public void ARestartForgetsWhatWasNotSmoothedYet()
    {
        var (used, fresh) = (new SmoothedBins(Design), new SmoothedBins(Design));
        Vector128<double>[] lights = [.. Enumerable.Range(0, BinsPerSecond).Select(n => Vector128.Create(11 + Math.Sin(n), 12 + Math.Cos(n)))];
        used.Push(0, lights);
        used.Restart();
        used.Push(BinsPerSecond, lights);
        fresh.Push(BinsPerSecond, lights);
        used.Smooth();
        fresh.Smooth();
        AssertSame(fresh, used);
    }

    [Theory]
    [InlineData(2)]
    [InlineData(5)]
    [InlineData(16)]
    public void WholeBinsAreAveragedAsTheirSamplesAre(int samplesPerBin)
    {
        const int bins = 40;
        var random = new Random(samplesPerBin);
        var samples = Enumerable.Range(0, samplesPerBin * bins).Select(_ => Sample.OfLight(100_000 * random.NextDouble(), 200_000 * random.NextDouble())).ToArray();
        var (one, other) = (new BinAverager(samplesPerBin, hasRed: true), new BinAverager(samplesPerBin, hasRed: true));
        for (var n = 0; n < bins;)
        {
            other.TryTurnTo(n * samplesPerBin, out _, out _);
            var together = other.AverageWhole(samples.AsSpan(n * samplesPerBin), out var first);
            Assert.Equal(n, first);
            Assert.NotEqual(0, together.Length);
            foreach (var light in together)
            {
                one.TryTurnTo(n * samplesPerBin, out _, out _);
                one.Add(samples.AsSpan(n++ * samplesPerBin, samplesPerBin));
                Assert.True(one.TryTake(out var bin));
                Assert.Equal(bin.Light, light);
            }
        }
    }

    [Theory]
    [InlineData(25)]
    [InlineData(100)]
    [InlineData(256)]
    [InlineData(1000)]
    public void AWindowHasAsManyBinsAsItsSlowBasis(double hz)
    {
        var design = new SignalDesign(new SampleRate(hz), new());
        for (var seconds = design.Options.ShortestWindowSeconds; seconds <= design.Options.LongestWindowSeconds; seconds++)
        {
            Assert.Equal(design.SlowOf(seconds).Length, design.WindowBins(seconds));
        }
    }

    private static void AssertSame(SmoothedBins one, SmoothedBins other)
    {
        Assert.Equal(one.Count, other.Count);
        Assert.Equal(one.NewestBin, other.NewestBin);
        Assert.Equal(one.NoiseOver(8), other.NoiseOver(8));
        Assert.Equal(one.NoiseOver(1), other.NoiseOver(1));
        var (mine, others) = (new Vector128<double>[Design.LongestWindowBins], new Vector128<double>[Design.LongestWindowBins]);
        one.CopyNewest(MemoryMarshal.Cast<Vector128<double>, double>(mine.AsSpan()));
        other.CopyNewest(MemoryMarshal.Cast<Vector128<double>, double>(others.AsSpan()));
        Assert.Equal(mine, others);
    }
}
