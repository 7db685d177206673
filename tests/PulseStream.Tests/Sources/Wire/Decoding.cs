using PulseStream.Samples;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Tests.Sources.Wire;

/// <summary>What comes out of a decoder.</summary>
internal sealed record Decoding(IReadOnlyList<(long Index, Sample Sample)> Samples, SampleTally Tally, WireDecoder Decoder)
{
    public static Decoding Of(WireLayout layout, byte[] bytes, params int[] cuts)
    {
        var decoder = new WireDecoder(layout);
        for (var (at, turn) = (0, 0); at < bytes.Length; turn++)
        {
            var length = cuts.Length == 0 ? bytes.Length : Math.Min(cuts[turn % cuts.Length], bytes.Length - at);
            decoder.Read(bytes.AsSpan(at, length), 0);
            at += length;
        }

        decoder.Finish();
        return new(Taken(decoder), decoder.Tally, decoder);
    }

    public static List<(long Index, Sample Sample)> Taken(WireDecoder decoder)
    {
        var samples = new List<(long, Sample)>();
        while (decoder.TakeBlock() is { } block)
        {
            samples.AddRange(block.Samples.ToArray().Select((sample, i) => (block.FirstIndex + i, sample)));
        }

        return samples;
    }
}
