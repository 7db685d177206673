using CsCheck;
using PulseStream.Plots;
using Xunit;

namespace PulseStream.Tests.Plots;

public class EnvelopeTests
{
    [Fact]
    public void AShortSignalIsKeptSampleBySample()
    {
        var envelope = new Envelope();
        for (var i = 0; i < Envelope.BinCount; i++)
        {
            envelope.Add(i, i % 7);
        }

        Assert.Equal(1, envelope.SamplesPerBin);
        Assert.All(Enumerable.Range(0, Envelope.BinCount), i => Assert.Equal(i % 7, envelope.HighOf(i)));
    }

    /// <summary>Against the plain way: all samples in a list, the lowest and highest of each bin.</summary>
    [Fact]
    public void EveryBinHasTheLowestAndHighestOfItsSamples() =>
        Gen.Select(Gen.Int[1, 60_000], Gen.Int[1, 5], Gen.Int[0, 1000]).Sample(
            (length, everyNth, seed) =>
            {
                var random = new Random(seed);
                var values = Enumerable.Range(0, length).Where(i => i % everyNth == 0).ToDictionary(i => (long)i, _ => random.NextDouble() - 0.5);
                var envelope = new Envelope();
                foreach (var (index, value) in values)
                {
                    envelope.Add(index, value);
                }

                var bins = values.GroupBy(pair => (int)(pair.Key / envelope.SamplesPerBin), pair => pair.Value).ToDictionary(g => g.Key, g => g.ToArray());
                Assert.Equal(bins.Keys.Max() + 1, envelope.Count);
                for (var bin = 0; bin < envelope.Count; bin++)
                {
                    Assert.Equal(bins.TryGetValue(bin, out var all) ? all.Min() : double.NaN, envelope.LowOf(bin));
                    Assert.Equal(all?.Max() ?? double.NaN, envelope.HighOf(bin));
                }
            },
            iter: 30);

    [Fact]
    public void ANightHasAsManyBinsAsAMinute()
    {
        var envelope = new Envelope();
        envelope.Add(0, 1);
        envelope.Add((1000L * 3600 * 12) - 1, 2);

        Assert.InRange(envelope.Count, Envelope.BinCount / 2, Envelope.BinCount);
        Assert.Equal(1, envelope.HighOf(0));
        Assert.Equal(2, envelope.HighOf(envelope.Count - 1));
    }
}
