using CsCheck;
using PulseStream.Sources.Wire.Layout;
using Xunit;

namespace PulseStream.Tests.Sources.Wire;

public sealed class WireDecoderPropertyTests
{
    private const int Frames = 60;

    private enum Damage
    {
        Garbage,
        Flip,
        Cut,
        Double,
    }

    private static readonly Gen<WireLayout> AnyLayout = Gen.Int[0, Instruments.All.Count - 1].Select(i => Instruments.All[i]);

    [Fact]
    public void AnyCutGivesTheSameSamples() =>
        Gen.Select(AnyLayout, Gen.Byte.Array[0, 40], Gen.Int[1, 50].Array[1, 6]).Sample(
            (layout, garbage, cuts) =>
            {
                var bytes = Said(layout).Take(Frames / 2).Append(garbage).Concat(Said(layout).Skip(Frames / 2)).SelectMany(b => b).ToArray();
                var (whole, cut) = (Decoding.Of(layout, bytes), Decoding.Of(layout, bytes, cuts));
                Assert.Equal(whole.Samples, cut.Samples);
                Assert.Equal(whole.Tally, cut.Tally);
            },
            iter: 500,
            seed: "0000KxDJuyv3");

    [Fact]
    public void WhatIsSaidIsRead() =>
        Gen.Select(AnyLayout, Gen.Int[0, 3], Gen.Int[1, 400]).Sample(
            (layout, start, count) =>
            {
                var first = start * 65_400L;
                var bytes = Instruments.Frames(layout, first, count).SelectMany(b => b).ToArray();
                var sent = count / Instruments.SamplesPerFrame(layout) * Instruments.SamplesPerFrame(layout);
                var read = Decoding.Of(layout, bytes);
                Assert.Equal(Enumerable.Range(0, sent).Select(i => ((long)i, Instruments.SampleOf(first + i))), read.Samples);
                Assert.Equal((sent, 0L, 0L, 0L), (read.Tally.Samples, read.Tally.Missing, read.Tally.RefusedRows, read.Tally.Repeats));
            },
            iter: 300,
            seed: "0000KxDJuyv4");

    // Between the frames garbage touches none; within, at most two: a delimiter may be hit.
    [Fact]
    public void DamageCostsAtMostTheFramesItTouches() =>
        Gen.Select(Gen.Int[0, Instruments.Proven.Count - 1], Gen.Enum<Damage>(), Gen.Double[0.1, 0.9], Gen.Byte.Array[1, 30], Gen.Int[0, 7]).Sample(
            (which, damage, place, garbage, bit) =>
            {
                var layout = Instruments.Proven[which];
                var frames = Said(layout);
                var bytes = frames.SelectMany(b => b).ToList();
                var at = (int)(place * bytes.Count);
                Harm(bytes, at, damage, garbage, bit);

                var read = Decoding.Of(layout, [.. bytes]);

                var sent = Frames * Instruments.SamplesPerFrame(layout);
                Assert.All(read.Samples, sample => Assert.Equal(Instruments.SampleOf(sample.Index), sample.Sample));
                Assert.InRange(sent - read.Samples.Count, 0, 2 * Instruments.SamplesPerFrame(layout));
                Assert.Equal(sent, read.Tally.Samples + read.Tally.Missing);
            },
            iter: 3000,
            seed: "0000KxDJuyv5");

    [Fact]
    public void GarbageBetweenFramesCostsNone() =>
        Gen.Select(Gen.Int[0, 1], Gen.Byte.Array[1, 40]).Sample(
            (which, garbage) =>
            {
                var layout = which == 0 ? Instruments.Sync : Instruments.Slip;
                var bytes = Said(layout).Take(Frames / 2).Append(garbage).Concat(Said(layout).Skip(Frames / 2)).SelectMany(b => b).ToArray();
                Assert.Equal(Frames, Decoding.Of(layout, bytes).Samples.Count);
            },
            iter: 500,
            seed: "0000KxDJuyv6");

    // Two million bytes, from which a wide checksum lets nothing through and nothing throws.
    [Fact]
    public void RandomBytesNeverThrow() =>
        Gen.Select(AnyLayout, Gen.Byte.Array[10_000]).Sample(
            (layout, bytes) =>
            {
                var read = Decoding.Of(layout, bytes, 997);
                Assert.True(layout != Instruments.Slip || read.Samples.Count == 0);
                Assert.All(read.Samples, sample => Assert.True(sample.Sample.Infrared >= 0));
            },
            iter: 200,
            seed: "0000KxDJuyv7");

    private static List<byte[]> Said(WireLayout layout) => Instruments.Frames(layout, 0, Frames * Instruments.SamplesPerFrame(layout));

    private static void Harm(List<byte> bytes, int at, Damage damage, byte[] garbage, int bit)
    {
        switch (damage)
        {
            case Damage.Garbage:
                bytes.InsertRange(at, garbage);
                break;
            case Damage.Flip:
                bytes[at] ^= (byte)(1 << bit);
                break;
            case Damage.Cut:
                bytes.RemoveAt(at);
                break;
            default:
                bytes.Insert(at, bytes[at]);
                break;
        }
    }
}
