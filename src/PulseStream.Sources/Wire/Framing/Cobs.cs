namespace PulseStream.Sources.Wire.Framing;

/// <summary>Consistent overhead byte stuffing (Cheshire and Baker, IEEE/ACM Transactions on Networking 7, 1999), without the zero at the end.</summary>
internal static class Cobs
{
    // A block of this code has 254 bytes and no zero after it.
    private const byte LongestCode = 255;

    /// <summary>Takes a frame out of its stuffing, in place or elsewhere.</summary>
    /// <param name="stuffed">Bytes between two delimiters.</param>
    /// <param name="plain">At least as long.</param>
    /// <param name="length">Bytes written.</param>
    /// <returns>False where this is no stuffing.</returns>
    public static bool TryDecode(ReadOnlySpan<byte> stuffed, Span<byte> plain, out int length)
    {
        length = 0;
        for (var at = 0; at < stuffed.Length;)
        {
            var code = stuffed[at++];
            var count = code - 1;
            if (code == 0 || at + count > stuffed.Length || stuffed.Slice(at, count).Contains((byte)0))
            {
                return false;
            }

            stuffed.Slice(at, count).CopyTo(plain[length..]);
            length += count;
            at += count;
            if (code != LongestCode && at < stuffed.Length)
            {
                plain[length++] = 0;
            }
        }

        return stuffed.Length > 0;
    }

    /// <summary>Stuffs a frame, in the short form: no block follows 254 bytes that end it.</summary>
    /// <param name="plain">The frame.</param>
    public static byte[] Encode(ReadOnlySpan<byte> plain)
    {
        var stuffed = new List<byte> { 0 };
        var codeAt = 0;
        for (var at = 0; at < plain.Length; at++)
        {
            if (plain[at] != 0)
            {
                stuffed.Add(plain[at]);
            }

            var isFull = stuffed.Count - codeAt == LongestCode && at + 1 < plain.Length;
            if (plain[at] == 0 || isFull)
            {
                stuffed[codeAt] = (byte)(stuffed.Count - codeAt);
                codeAt = stuffed.Count;
                stuffed.Add(0);
            }
        }

        stuffed[codeAt] = (byte)(stuffed.Count - codeAt);
        return [.. stuffed];
    }
}
