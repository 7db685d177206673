using PulseStream.Sources.Wire.Layout;

namespace PulseStream.Sources.Wire.Framing;

/// <summary>Frames that end at a byte which stuffing keeps out of them.</summary>
internal sealed class StuffedFrames(BinaryLayout layout, FrameReader frames)
{
    private readonly byte[] _plain = new byte[LongestOf(layout)];

    /// <summary>The finder of such frames.</summary>
    public static FrameFinder Finder(BinaryLayout layout, FrameReader frames) => new Pieces(
        layout.Frame == FrameKind.Cobs ? (byte)0 : Slip.End,
        LongestOf(layout),
        new StuffedFrames(layout, frames).Take,
        fault => frames.Lose(fault, 1, 1),
        skipsCutPiece: false);

    // Every byte may be escaped in SLIP, which is more than COBS adds.
    private static int LongestOf(BinaryLayout layout) => (2 * layout.Length) + 2;

    private WireFault Take(ReadOnlySpan<byte> piece, double arrivalSeconds)
    {
        if (!(layout.Frame == FrameKind.Cobs ? Cobs.TryDecode(piece, _plain, out var length) : Slip.TryDecode(piece, _plain, out length)))
        {
            return WireFault.Stuffing;
        }

        var frame = _plain.AsSpan(0, length);
        if (length != layout.Length)
        {
            return WireFault.Length;
        }

        if (!frames.Holds(frame))
        {
            return WireFault.Checksum;
        }

        frames.Take(frame, arrivalSeconds);
        return WireFault.None;
    }
}
