using PulseStream.Readings;

namespace PulseStream.Plots.Panels;

/// <summary>The number beside a reading's dot.</summary>
/// <param name="Reading">The reading.</param>
/// <param name="Time">The number's middle, seconds.</param>
/// <param name="IsAbove">Above the dot or below it.</param>
internal sealed record ReadingLabel(Reading Reading, double Time, bool IsAbove)
{
    /// <summary>Size of the letters, pixels.</summary>
    public const float LetterSize = 14;

    /// <summary>From a dot's middle to the edge of its number, pixels.</summary>
    public const float LiftPixels = 6;

    /// <summary>Height of a number with a margin, pixels.</summary>
    public const float HeightPixels = 18;

    // A bold digit of that size, and a margin.
    private const float DigitPixels = 9.5f;
    private const float MarginPixels = 5;

    /// <summary>Text of the number.</summary>
    public string Text => $"{Reading.WholeSpo2Percent}";

    /// <summary>Width of the number with a margin, pixels.</summary>
    public double WidthPixels => (Text.Length * DigitPixels) + MarginPixels;

    /// <summary>From the dot's middle up to the number's middle, pixels; negative where the number is below.</summary>
    public double RisePixels => IsAbove ? LiftPixels + (HeightPixels / 2) : -LiftPixels - (HeightPixels / 2);
}
