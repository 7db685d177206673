using System.Diagnostics;
using PulseStream.Simulation;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Benchmarks.Wire;

/// <summary>
/// Feeds decoders with what instruments say, damaged in every way, for as long as is asked. Whatever comes, nothing is
/// thrown, indices only rise, counts are never negative, and every sample handed on has been counted.
/// </summary>
internal static class Fuzz
{
    private const int SaidSamples = 400;
    private const int MostDamages = 20;
    private const int LongestPiece = 300;

    public static int Print(int seconds, int seed)
    {
        var random = new Random(seed);
        var layouts = new[] { "hut-text", "hut-binary" }.Select(Cable.Layout).Select(file => WireLayoutFile.Parse(File.ReadAllBytes(file), file)).ToArray();
        var said = layouts.Select(Said).ToArray();
        var (clock, bytes, samples, refused) = (Stopwatch.StartNew(), 0L, 0L, 0L);
        while (clock.Elapsed.TotalSeconds < seconds)
        {
            var which = random.Next(layouts.Length);
            var damaged = Damaged(said[which], random);
            var decoder = new WireDecoder(layouts[which]);
            Decode(decoder, damaged, random);
            bytes += damaged.Count;
            samples += decoder.Tally.Samples;
            refused += decoder.Tally.RefusedRows;
        }

        Console.WriteLine($"{bytes} bytes in {seconds} s, seed {seed}: {samples} samples read, {refused} frames refused, nothing thrown");
        return 0;
    }

    private static byte[] Said(WireLayout layout)
    {
        var encoder = new WireEncoder(layout);
        var recording = new SimulatedRecording(new Scenario { DurationSeconds = SaidSamples / layout.Rate.Hz, RateHz = layout.Rate.Hz, Seed = 7 });
        return [.. recording.Blocks(SaidSamples).SelectMany(block => block.Samples.ToArray()).SelectMany((sample, i) => encoder.Say(i, sample))];
    }

    private static List<byte> Damaged(byte[] said, Random random)
    {
        var bytes = said.ToList();
        for (var i = random.Next(MostDamages); i > 0; i--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(4))
            {
                case 0:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    bytes.RemoveRange(at, Math.Min(random.Next(LongestPiece), bytes.Count - at - 1));
                    break;
                case 2:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(random.Next(LongestPiece), bytes.Count - at)));
                    break;
                default:
                    var garbage = new byte[random.Next(LongestPiece)];
                    random.NextBytes(garbage);
                    bytes.InsertRange(at, garbage);
                    break;
            }
        }

        return bytes;
    }

    private static void Decode(WireDecoder decoder, List<byte> bytes, Random random)
    {
        var (at, seconds, next, handedOn) = (0, 0.0, 0L, 0L);
        while (at < bytes.Count)
        {
            var length = Math.Min(1 + random.Next(LongestPiece), bytes.Count - at);
            seconds += random.Next(50) == 0 ? random.Next(30) : 0.02;
            decoder.Read([.. bytes.GetRange(at, length)], seconds);
            at += length;
            if (random.Next(50) == 0)
            {
                decoder.Break();
            }

            handedOn += Take(decoder, ref next);
        }

        decoder.Finish();
        handedOn += Take(decoder, ref next);
        Hold(handedOn == decoder.Tally.Samples, $"{handedOn} samples handed on, {decoder.Tally.Samples} counted");
    }

    private static long Take(WireDecoder decoder, ref long next)
    {
        var count = 0L;
        while (decoder.TakeBlock() is { } block)
        {
            Hold(block.FirstIndex >= next, $"index {block.FirstIndex} after {next - 1}");
            foreach (ref readonly var sample in block.Samples.Span)
            {
                Hold(sample.Red >= 0 && sample.Infrared >= 0, $"counts {sample.Red} and {sample.Infrared}");
            }

            next = block.EndIndex;
            count += block.Samples.Length;
        }

        return count;
    }

    private static void Hold(bool holds, string found)
    {
        if (!holds)
        {
            throw new InvalidOperationException(found);
        }
    }
}
