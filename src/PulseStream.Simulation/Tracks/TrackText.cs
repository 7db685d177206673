using System.Globalization;
using PulseStream.Samples;

namespace PulseStream.Simulation.Tracks;

/// <summary>
/// Tracks as text. `97` is constant; `97@0,88@60,88@120` runs in straight lines through the points VALUE@SECONDS;
/// `97,step 88@60` jumps. A first part without `@` is the value at 0 s. Parts may be mixed: `97,step 88@60,92@90`.
/// </summary>
public static class TrackText
{
    private const string StepWord = "step ";
    private const string Remedy = "Write one value such as 97, points such as 97@0,88@60 in order of time, or a jump such as 97,step 88@60";

    /// <summary>Reads a track.</summary>
    /// <param name="option">The option it was given with, for the message: "--spo2".</param>
    /// <param name="text">The text.</param>
    /// <exception cref="BadInputException">The text is no track.</exception>
    public static Track Parse(string option, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var points = new List<TrackPoint>();
        foreach (var part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            points.Add(ReadPart(option, part, points));
        }

        return new Track(points);
    }

    private static TrackPoint ReadPart(string option, string part, List<TrackPoint> before)
    {
        var jumps = part.StartsWith(StepWord, StringComparison.OrdinalIgnoreCase);
        var pieces = (jumps ? part[StepWord.Length..] : part).Split('@', StringSplitOptions.TrimEntries);
        if (pieces.Length > 2 || (pieces.Length == 1 && before.Count > 0))
        {
            throw new BadInputException(option, $"expected VALUE@SECONDS, found '{part}'", Remedy);
        }

        var value = Number(option, pieces[0]);
        var seconds = pieces.Length == 2 ? Number(option, pieces[1]) : 0;
        if (seconds < 0 || (before.Count > 0 && !(seconds > before[^1].Seconds)) || (jumps && before.Count == 0))
        {
            throw new BadInputException(option, $"expected a time later than the part before, found '{part}'", Remedy);
        }

        return new TrackPoint(seconds, jumps ? before[^1].After : value, value);
    }

    private static double Number(string option, string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && double.IsFinite(number)
            ? number
            : throw new BadInputException(option, $"expected a number, found '{text}'", Remedy);
}
