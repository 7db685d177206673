namespace PulseStream.Sources.Wire.Layout;

/// <summary>Where a frame carries which checksum over what.</summary>
/// <param name="Kind">How it is computed.</param>
/// <param name="Byte">Where it stands in the frame.</param>
/// <param name="IsBigEndian">Whether its highest byte comes first.</param>
/// <param name="From">First byte that it covers.</param>
/// <param name="To">Just past the last byte that it covers.</param>
public sealed record ChecksumRule(ChecksumKind Kind, int Byte, bool IsBigEndian, int From, int To)
{
    /// <summary>No checksum: damage can pass unseen.</summary>
    public static ChecksumRule None { get; } = new(ChecksumKind.None, 0, IsBigEndian: false, 0, 0);

    /// <summary>Just past the last byte of the frame that this rule needs.</summary>
    public int End => Kind == ChecksumKind.None ? 0 : Math.Max(To, Byte + Checksum.BytesOf(Kind));

    /// <summary>Whether a frame carries the checksum that its bytes have.</summary>
    /// <param name="frame">At least <see cref="End"/> bytes.</param>
    public bool Holds(ReadOnlySpan<byte> frame) =>
        Kind == ChecksumKind.None
        || ByteOrder.Read(frame.Slice(Byte, Checksum.BytesOf(Kind)), IsBigEndian) == Checksum.Of(Kind, frame[From..To]);

    /// <summary>Puts the checksum in its place.</summary>
    /// <param name="frame">All other bytes are written.</param>
    public void Write(Span<byte> frame)
    {
        if (Kind != ChecksumKind.None)
        {
            ByteOrder.Write(frame.Slice(Byte, Checksum.BytesOf(Kind)), Checksum.Of(Kind, frame[From..To]), IsBigEndian);
        }
    }
}
