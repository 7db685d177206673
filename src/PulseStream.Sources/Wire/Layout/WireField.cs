using System.Numerics;
using PulseStream.Sources.Csv;

namespace PulseStream.Sources.Wire.Layout;

/// <summary>A number in a binary frame.</summary>
/// <param name="Column">What it means.</param>
/// <param name="Byte">Where it begins, counted from the frame's or the sample's first byte.</param>
/// <param name="Bytes">1 to 4.</param>
/// <param name="IsBigEndian">Whether its highest byte comes first.</param>
/// <param name="Mask">Which bits of it count.</param>
/// <param name="IsSigned">Whether the mask's highest bit is a sign.</param>
/// <param name="Scale">Factor from the number to its unit.</param>
/// <param name="Add">Added after that.</param>
/// <param name="IsPerFrame">Whether it is counted from the frame's first byte.</param>
internal sealed record WireField(
    CsvColumn Column, int Byte, int Bytes, bool IsBigEndian, uint Mask, bool IsSigned, double Scale, double Add, bool IsPerFrame)
{
    private readonly int _shift = BitOperations.TrailingZeroCount(Mask);

    /// <summary>Bits of the number: from the mask's lowest to its highest.</summary>
    public int Bits => BitOperations.Log2(Mask) + 1 - _shift;

    /// <summary>The number as it stands in the frame, before scale.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="sampleByte">First byte of the sample.</param>
    public long RawOf(ReadOnlySpan<byte> frame, int sampleByte)
    {
        long raw = (ByteOrder.Read(Place(frame, sampleByte), IsBigEndian) & Mask) >> _shift;
        return IsSigned && (raw >> (Bits - 1)) != 0 ? raw - (1L << Bits) : raw;
    }

    public double ValueOf(ReadOnlySpan<byte> frame, int sampleByte) => (RawOf(frame, sampleByte) * Scale) + Add;

    /// <summary>Puts a number into a frame whose other bits stay; what does not fit becomes the nearest that does.</summary>
    /// <param name="frame">The frame.</param>
    /// <param name="sampleByte">First byte of the sample.</param>
    /// <param name="value">In its unit.</param>
    public void Write(Span<byte> frame, int sampleByte, double value)
    {
        var lowest = IsSigned ? -(1L << (Bits - 1)) : 0;
        var highest = lowest + (1L << Bits) - 1;
        WriteRaw(frame, sampleByte, (long)Math.Clamp(Math.Round((value - Add) / Scale), lowest, highest));
    }

    public void WriteRaw(Span<byte> frame, int sampleByte, long raw)
    {
        var place = frame.Slice(sampleByte + Byte, Bytes);
        var others = ByteOrder.Read(place, IsBigEndian) & ~Mask;
        ByteOrder.Write(place, others | ((uint)((raw << _shift) & uint.MaxValue) & Mask), IsBigEndian);
    }

    private ReadOnlySpan<byte> Place(ReadOnlySpan<byte> frame, int sampleByte) => frame.Slice(sampleByte + Byte, Bytes);
}
