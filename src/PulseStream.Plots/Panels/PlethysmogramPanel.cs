using PulseStream.Readings;
using PulseStream.Samples;
using ScottPlot;

namespace PulseStream.Plots.Panels;

/// <summary>The plethysmogram with its beats.</summary>
internal static class PlethysmogramPanel
{
    // Marks closer than this would merge.
    private const double PixelsPerBeat = 9;
    private const float MarkSize = 7;
    private const float MarkHeightPixels = 7;

    // The scale follows the usable seconds, a few peaks aside: one jerk of the hand must not flatten every beat.
    private const double ScaledShare = 0.995;

    // Nor must what a finger that comes leaves in the filter for a while.
    private const int SettlingSeconds = 5;
    private const double Margin = 0.12;

    /// <summary>What stands above it.</summary>
    /// <param name="content">The session.</param>
    /// <param name="area">Its place.</param>
    public static PanelText TextOf(SessionContent content, PanelArea area)
    {
        var form = (IsEnvelope(content) ? ", lowest to highest" : string.Empty) + (ShowsBeats(content, area) ? " · ▲ a beat" : string.Empty);
        return content.Session.Header.Columns.HasFlag(SampleColumns.Infrared)
            ? new("Plethysmogram (% of the infrared light)", $"up: more blood · filtered{form}")
            : new("Plethysmogram (the recording's own unit)", $"up: more blood · filtered{form}");
    }

    /// <summary>Draws it.</summary>
    /// <param name="content">The session.</param>
    /// <param name="area">Its place.</param>
    public static Panel Draw(SessionContent content, PanelArea area)
    {
        var (low, high) = ScaleOf(content);
        var panel = new Panel(area, low, high);
        panel.ShadeRefused(content.Seconds);
        if (content.Plethysmogram.Count == 0)
        {
            panel.Say("No samples in this session.");
            return panel;
        }

        var (times, values) = PathOf(content);
        panel.Plot.Add.ScatterLine(times, values, IsEnvelope(content) ? Palette.Soft : Palette.Ink).LineWidth = 1;
        if (ShowsBeats(content, area))
        {
            var bottom = low + (MarkHeightPixels * (high - low) / area.Height);
            panel.Plot.Add.Markers(content.BeatTimes.Select(time => new Coordinates(time, bottom)).ToArray(), MarkerShape.FilledTriangleUp, MarkSize, Palette.Vermilion);
        }

        return panel;
    }

    private static bool IsEnvelope(SessionContent content) => content.Plethysmogram.SamplesPerBin > 1;

    private static bool ShowsBeats(SessionContent content, PanelArea area) =>
        content.BeatTimes.Count > 0 && content.BeatTimes.Count * PixelsPerBeat <= area.DataWidth;

    // A bin without a sample is a gap: the drawing library interrupts the line at NaN.
    private static (double[] Times, double[] Values) PathOf(SessionContent content)
    {
        var envelope = content.Plethysmogram;
        var rate = content.Session.Header.Rate;
        var times = new List<double>();
        var values = new List<double>();
        for (var bin = 0; bin < envelope.Count; bin++)
        {
            times.Add(rate.SecondsAt(((bin + 0.5) * envelope.SamplesPerBin) - 0.5));
            values.Add(envelope.LowOf(bin));
            if (IsEnvelope(content))
            {
                times.Add(times[^1]);
                values.Add(envelope.HighOf(bin));
            }
        }

        return ([.. times], [.. values]);
    }

    private static (double Low, double High) ScaleOf(SessionContent content)
    {
        var envelope = content.Plethysmogram;
        var calm = CalmSecondsOf(content.Seconds);
        var all = Enumerable.Range(0, envelope.Count).Where(bin => !double.IsNaN(envelope.LowOf(bin))).ToArray();
        var scaled = all.Where(IsCalm).ToArray();
        scaled = scaled.Length > 0 ? scaled : all;
        var low = -Peak(scaled.Select(bin => -envelope.LowOf(bin)));
        var high = Peak(scaled.Select(envelope.HighOf));
        return high > low ? (low - (2 * Margin * (high - low)), high + (Margin * (high - low))) : (-1.2, 1.2);

        bool IsCalm(int bin)
        {
            var rate = content.Session.Header.Rate;
            return calm.Contains(rate.SecondOf(bin * envelope.SamplesPerBin)) && calm.Contains(rate.SecondOf(((bin + 1) * envelope.SamplesPerBin) - 1));
        }
    }

    private static HashSet<long> CalmSecondsOf(IEnumerable<Second> seconds)
    {
        var calm = new HashSet<long>();
        foreach (var run in SecondRun<bool>.Of(seconds, second => second.IsUsable ? true : null))
        {
            for (var second = run.From + SettlingSeconds; second < run.To; second++)
            {
                calm.Add(second);
            }
        }

        return calm;
    }

    private static double Peak(IEnumerable<double> values)
    {
        var sorted = values.Order().ToArray();
        return sorted.Length == 0 ? 0 : sorted[(int)(ScaledShare * (sorted.Length - 1))];
    }
}
