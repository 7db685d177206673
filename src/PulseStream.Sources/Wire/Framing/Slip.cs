namespace PulseStream.Sources.Wire.Framing;

/// <summary>Framing of RFC 1055, without the END bytes around the frame.</summary>
internal static class Slip
{
    public const byte End = 0xC0;

    private const byte Escape = 0xDB;
    private const byte EscapedEnd = 0xDC;
    private const byte EscapedEscape = 0xDD;

    /// <summary>Takes a frame out of its escapes.</summary>
    /// <param name="escaped">Bytes between two END.</param>
    /// <param name="plain">At least as long.</param>
    /// <param name="length">Bytes written.</param>
    /// <returns>False where an escape is followed by what it cannot be.</returns>
    public static bool TryDecode(ReadOnlySpan<byte> escaped, Span<byte> plain, out int length)
    {
        length = 0;
        for (var at = 0; at < escaped.Length; at++)
        {
            var value = escaped[at];
            if (value == Escape)
            {
                at++;
                value = at < escaped.Length ? escaped[at] : (byte)0;
                if (value is not (EscapedEnd or EscapedEscape))
                {
                    return false;
                }

                value = value == EscapedEnd ? End : Escape;
            }

            plain[length++] = value;
        }

        return true;
    }

    /// <summary>Escapes a frame.</summary>
    /// <param name="plain">The frame.</param>
    public static byte[] Encode(ReadOnlySpan<byte> plain)
    {
        var escaped = new List<byte>(plain.Length);
        foreach (var value in plain)
        {
            escaped.AddRange(value switch
            {
                End => [Escape, EscapedEnd],
                Escape => [Escape, EscapedEscape],
                _ => [value],
            });
        }

        return [.. escaped];
    }
}
