using System.Text;

namespace PulseStream.Sources.Csv;

/// <summary>Makes bytes of a file fit to be quoted in one line of a message.</summary>
internal static class PrintableText
{
    // Long enough to recognise the place in the file, short enough for a sentence.
    private const int LongestQuote = 60;

    // A character has at most four bytes.
    public static string Of(ReadOnlySpan<byte> bytes) =>
        Of(Encoding.UTF8.GetString(bytes.Length > 4 * LongestQuote ? bytes[..(4 * LongestQuote)] : bytes));

    public static string Of(string text)
    {
        var shown = text.Length > LongestQuote ? text[..LongestQuote] + "…" : text;
        return string.Concat(shown.Select(c => char.IsControl(c) || char.IsSurrogate(c) || c is '\u2028' or '\u2029' ? '?' : c));
    }
}
