namespace PulseStream.Sources.Wire;

/// <summary>Whole numbers of one to four bytes in either order.</summary>
internal static class ByteOrder
{
    private const int BitsPerByte = 8;

    public static uint Read(ReadOnlySpan<byte> bytes, bool isBigEndian)
    {
        var value = 0U;
        for (var i = 0; i < bytes.Length; i++)
        {
            value = (value << BitsPerByte) | bytes[isBigEndian ? i : bytes.Length - 1 - i];
        }

        return value;
    }

    public static void Write(Span<byte> bytes, uint value, bool isBigEndian)
    {
        for (var i = 0; i < bytes.Length; i++)
        {
            bytes[isBigEndian ? bytes.Length - 1 - i : i] = (byte)(value & byte.MaxValue);
            value >>= BitsPerByte;
        }
    }
}
