using PulseStream.Readings;

namespace PulseStream.Plots.Panels;

/// <summary>Chooses which readings get their number written so that no number covers another; low ones come first.</summary>
/// <param name="pixelsPerSecond">Pixels that a second takes.</param>
/// <param name="pixelsPerPercent">Pixels that a percent takes.</param>
/// <param name="width">Width of the panel's data, pixels.</param>
internal sealed class ReadingLabels(double pixelsPerSecond, double pixelsPerPercent, double width)
{
    /// <summary>Size of the letters, pixels.</summary>
    public const float LetterSize = 14;

    /// <summary>From a reading's dot up to its number, pixels.</summary>
    public const float LiftPixels = 6;

    /// <summary>What a dot and its number take above the value, pixels.</summary>
    public const float RoomPixels = 28;

    // Three bold digits with a margin.
    private const double WidthPixels = 32;
    private const double HeightPixels = 20;

    /// <summary>The readings with a number, and the time at the number's middle, seconds.</summary>
    /// <param name="readings">All of them.</param>
    public IReadOnlyList<(Reading Reading, double Time)> Choose(IReadOnlyList<Reading> readings)
    {
        var chosen = new List<(Reading Reading, double Time)>();
        foreach (var reading in readings.OrderBy(r => r.WholeSpo2Percent).ThenBy(r => r.SecondIndex))
        {
            var time = Inside(reading.SecondIndex + 0.5);
            if (!chosen.Exists(other => Overlaps(reading, time, other.Reading, other.Time)))
            {
                chosen.Add((reading, time));
            }
        }

        return chosen;
    }

    private bool Overlaps(Reading a, double timeOfA, Reading b, double timeOfB) =>
        Math.Abs(timeOfA - timeOfB) * pixelsPerSecond < WidthPixels
        && Math.Abs(a.WholeSpo2Percent - b.WholeSpo2Percent) * pixelsPerPercent < HeightPixels;

    private double Inside(double time)
    {
        var margin = WidthPixels / 2 / pixelsPerSecond;
        return Math.Clamp(time, margin, Math.Max(margin, (width / pixelsPerSecond) - margin));
    }
}
