using System.Globalization;

namespace PulseStream.Sources.Edf;

/// <summary>Numbers in the eight letters that an EDF header has for them.</summary>
internal static class EdfNumber
{
    private const int Letters = 8;

    /// <summary>The number with as many decimals as fit.</summary>
    public static string Of(double value)
    {
        for (var decimals = Letters - 2; decimals >= 0; decimals--)
        {
            var text = value.ToString("0." + new string('#', decimals), CultureInfo.InvariantCulture);
            if (text.Length <= Letters)
            {
                return text;
            }
        }

        throw new ArgumentOutOfRangeException(nameof(value), value, "A number of an EDF header has eight letters at most.");
    }

    /// <summary>The largest number of the header that is not above a value.</summary>
    public static string Below(double value) => Moved(value, -1);

    /// <summary>The smallest number of the header that is not below a value.</summary>
    public static string Above(double value) => Moved(value, 1);

    public static double Parse(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Moved(double value, int direction)
    {
        var text = Of(value);
        var at = text.IndexOf('.', StringComparison.Ordinal);
        var step = at < 0 ? 1 : Math.Pow(10, at + 1 - text.Length);
        for (var moved = value; direction * (value - Parse(text)) > 0; moved += direction * step)
        {
            text = Of(moved + (direction * step));
        }

        return text;
    }
}
