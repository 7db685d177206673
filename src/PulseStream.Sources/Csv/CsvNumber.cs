using System.Globalization;

namespace PulseStream.Sources.Csv;

/// <summary>Reads numbers from UTF-8 text without making strings of them.</summary>
internal static class CsvNumber
{
    // Up to 15 digits are exact in a double, and so is a power of ten up to 22: one division then rounds once, correctly.
    private const int ExactDigits = 15;

    private static readonly double[] PowersOfTen =
        [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>Reads the field that opens <paramref name="text"/> and ends at a comma or the end.</summary>
    /// <param name="text">The field and what follows it.</param>
    /// <param name="value">The number, also NaN or infinite where the text says so.</param>
    /// <param name="length">Bytes up to the comma or the end.</param>
    public static bool TryRead(ReadOnlySpan<byte> text, out double value, out int length)
    {
        var negative = text.Length > 0 && text[0] == '-';
        var at = negative ? 1 : 0;
        var first = at;
        var digits = 0L;
        at = TakeDigits(text, at, ref digits);
        var count = at - first;
        var decimals = 0;
        if (at < text.Length && text[at] == '.')
        {
            var point = at;
            at = TakeDigits(text, at + 1, ref digits);
            decimals = at - point - 1;
            count += decimals;
        }

        if (count is 0 or > ExactDigits || (at < text.Length && text[at] != ','))
        {
            return TryReadAny(text, out value, out length);
        }

        value = digits / PowersOfTen[decimals];
        value = negative ? -value : value;
        length = at;
        return true;
    }

    /// <summary>How many decimals the text of a number has; null where an exponent hides it.</summary>
    public static int? Decimals(ReadOnlySpan<byte> field)
    {
        field = field.Trim(" \t"u8);
        var point = field.IndexOf((byte)'.');
        return field.IndexOfAny("eE"u8) >= 0 ? null : point < 0 ? 0 : field.Length - point - 1;
    }

    private static int TakeDigits(ReadOnlySpan<byte> text, int at, ref long digits)
    {
        unchecked
        {
            // Too many digits overflow here, and are counted and read the slow way afterwards.
            for (; at < text.Length; at++)
            {
                var digit = (uint)text[at] - '0';
                if (digit > 9)
                {
                    break;
                }

                digits = (digits * 10) + digit;
            }
        }

        return at;
    }

    private static bool TryReadAny(ReadOnlySpan<byte> text, out double value, out int length)
    {
        length = text.IndexOf((byte)',');
        length = length < 0 ? text.Length : length;
        var field = text[..length].Trim(" \t"u8);
        value = double.NaN;

        // The runtime overlooks zero bytes behind a number; a file that was cut off in a crash holds such.
        return !field.EndsWith((byte)0) && double.TryParse(
            field,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent,
            CultureInfo.InvariantCulture,
            out value);
    }
}
