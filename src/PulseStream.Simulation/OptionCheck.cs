using PulseStream.Samples;
using PulseStream.Simulation.Tracks;

namespace PulseStream.Simulation;

/// <summary>Limits of what a scenario can be told, as sentences for the person who told it.</summary>
internal static class OptionCheck
{
    /// <summary>The value itself, if it lies within its limits.</summary>
    /// <exception cref="BadInputException">It does not, or is not a number.</exception>
    public static double Within(string option, double value, double low, double high) => value >= low && value <= high
        ? value
        : throw new BadInputException(option, $"expected {low} to {high}, found {value}", $"Give a value from {low} to {high}");

    /// <summary>The value itself, if it lies within its limits.</summary>
    /// <exception cref="BadInputException">It does not.</exception>
    public static int Within(string option, int value, int low, int high) => (int)Within(option, (double)value, low, high);

    /// <summary>The track itself, if it never leaves its limits.</summary>
    /// <exception cref="BadInputException">It does.</exception>
    public static Track Within(string option, Track track, double low, double high)
    {
        ArgumentNullException.ThrowIfNull(track);
        Within(option, track.Lowest, low, high);
        Within(option, track.Highest, low, high);
        return track;
    }
}
