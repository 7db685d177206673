using System.Globalization;
using PulseStream.Samples;
using PulseStream.Triage;

namespace PulseStream.Cli.Options;

/// <summary>Reads what people type after an option; every complaint names the option.</summary>
internal static class OptionText
{
    private const string Remedy = "Correct the option and run again";

    private static readonly string[] InstantFormats =
    [
        "yyyy-MM-dd'T'HH:mmK",
        "yyyy-MM-dd'T'HH:mm:ssK",
        "yyyy-MM-dd'T'HH:mm:ss.FFFFFFFK",
    ];

    public static double? Number(string option, string? text, double from, double to) =>
        text is null ? null
        : TryNumber(text) is { } number && number >= from && number <= to ? number
        : throw new BadInputException(option, $"expected a number from {from} to {to}, found '{text}'", Remedy);

    public static long? Whole(string option, string? text, long from, long to) =>
        text is null ? null
        : long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number) && number >= from && number <= to ? number
        : throw new BadInputException(option, $"expected a whole number from {from} to {to}, found '{text}'", Remedy);

    public static string? OneOf(string option, string? text, params ReadOnlySpan<string> words) =>
        text is null || words.Contains(text)
            ? text
            : throw new BadInputException(option, $"expected one of {string.Join(", ", words)}, found '{text}'", Remedy);

    public static TargetRange? Target(string option, string? text)
    {
        if (text is null)
        {
            return null;
        }

        var ends = text.Split('-');
        return ends.Length == 2 && TryNumber(ends[0]) is { } low && TryNumber(ends[1]) is { } high && low >= 0 && high <= 100 && low < high
            ? new TargetRange(low, high)
            : throw new BadInputException(option, $"expected LOW-HIGH in percent with LOW under HIGH, such as 88-92, found '{text}'", Remedy);
    }

    public static DateTimeOffset? Instant(string option, string? text) =>
        text is null ? null
        : HasOffset(text) && DateTimeOffset.TryParseExact(text, InstantFormats, CultureInfo.InvariantCulture, DateTimeStyles.None, out var instant) ? instant
        : throw new BadInputException(option, $"expected a time with its offset, such as 2026-03-01T07:30:00+01:00, found '{text}'", Remedy);

    // Not thousands: "9,5" would read as 95. Not a NaN either, it passes no comparison.
    private static double? TryNumber(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number) ? number : null;

    // Without an offset the machine's own time zone would decide on the date.
    private static bool HasOffset(string text) => text.EndsWith('Z') || text.LastIndexOfAny(['+', '-']) > text.IndexOf('T', StringComparison.Ordinal);
}
