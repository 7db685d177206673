using PulseStream.Readings;
using PulseStream.Samples;
using ScottPlot;

namespace PulseStream.Plots.Panels;

/// <summary>SpO2 with its interval and the accepted readings.</summary>
internal static class SaturationPanel
{
    // A steady finger's tenths of a point must not look like a fall.
    private const double LeastSpan = 6;
    private const double Full = 100;

    // The scale lets a few wide intervals run out of the panel rather than flatten the rest.
    private const double ScaledShare = 0.95;
    private const double BandOpacity = 0.35;

    // A number stays readable where another second's line passes behind it.
    private const double LabelOpacity = 0.7;
    // Room for a reading's number above its dot, pixels.
    private const float RoomPixels = ReadingLabel.LiftPixels + ReadingLabel.HeightPixels + 2;

    /// <summary>What stands above it.</summary>
    /// <param name="content">The session.</param>
    public static PanelText TextOf(SessionContent content) => new(
        "SpO₂ (%)",
        content.Readings.Count > 0
            ? $"{Line(content)} · ● accepted reading, whole percent · grey: refused"
            : $"{Line(content)} · no accepted reading · grey: refused");

    /// <summary>Draws it.</summary>
    /// <param name="content">The session.</param>
    /// <param name="area">Its place.</param>
    public static Panel Draw(SessionContent content, PanelArea area)
    {
        var runs = SecondRun<Saturation>.Of(content.Seconds, second => second.Usable?.Spo2).ToArray();
        var (low, high) = ScaleOf(runs.SelectMany(run => run.Points).ToArray(), content.Readings, area.Height);
        var panel = new Panel(area, low, high, mostWritten: Full);
        panel.ShadeRefused(content.Seconds);
        foreach (var run in runs)
        {
            if (run.Points.All(point => point.HasInterval))
            {
                AddBand(panel, run);
            }

            panel.AddLine(new(run.From, run.To, [.. run.Points.Select(point => point.Percent)]), Palette.Blue);
        }

        AddReadings(panel, content, area, low, high);
        if (runs.Length == 0 && content.Readings.Count == 0)
        {
            panel.Say(content.Session.Header.Columns.HasFlag(SampleColumns.Red) || content.Session.HoldsShownValues ? "No second gave an SpO₂." : "No red light in this recording: no SpO₂.");
        }

        return panel;
    }

    private static string Line(SessionContent content) =>
        content.Seconds.Any(second => second.Usable?.Spo2 is { HasInterval: true }) ? "line with 95 % interval" : "line";

    private static void AddBand(Panel panel, SecondRun<Saturation> run)
    {
        var times = Panel.TimesOf(run);
        Saturation[] points = [run.Points[0], .. run.Points, run.Points[^1]];
        var outline = times.Zip(points, (time, point) => new Coordinates(time, point.HighPercent))
            .Concat(times.Zip(points, (time, point) => new Coordinates(time, point.LowPercent)).Reverse());
        var band = panel.Plot.Add.Polygon(outline.ToArray());
        band.FillColor = Palette.SkyBlue.WithOpacity(BandOpacity);
        band.LineWidth = 0;
    }

    private static void AddReadings(Panel panel, SessionContent content, PanelArea area, double low, double high)
    {
        if (content.Readings.Count == 0)
        {
            return;
        }

        var dots = content.Readings.Select(reading => new Coordinates(reading.SecondIndex + 0.5, reading.WholeSpo2Percent)).ToArray();
        panel.Plot.Add.Markers(dots, MarkerShape.FilledCircle, ReadingLabels.DotPixels, Palette.Vermilion);
        foreach (var label in new ReadingLabels(area, low, high).Choose(content.Readings))
        {
            var text = panel.Plot.Add.Text(label.Text, label.Time, label.Reading.WholeSpo2Percent);
            text.LabelFontName = ShippedFont.Name;
            text.LabelFontSize = ReadingLabel.LetterSize;
            text.LabelBold = true;
            text.LabelFontColor = Palette.Ink;
            text.LabelBackgroundColor = Colors.White.WithOpacity(LabelOpacity);
            text.LabelAlignment = Alignment.MiddleCenter;
            text.OffsetY = (float)-label.RisePixels;
        }
    }

    private static (double Low, double High) ScaleOf(Saturation[] points, IReadOnlyList<Reading> readings, double height)
    {
        var values = points.Select(point => point.Percent).Concat(readings.Select(reading => (double)reading.WholeSpo2Percent)).ToArray();
        if (values.Length == 0)
        {
            return (Full - (2 * LeastSpan) - 1, Full + 1);
        }

        points = [.. points.Select(point => point.OrPoint())];
        var low = Math.Min(values.Min(), points.Select(point => point.LowPercent).OrderDescending().ElementAtOrDefault((int)(ScaledShare * (points.Length - 1))));
        var high = Math.Max(values.Max(), points.Select(point => point.HighPercent).Order().ElementAtOrDefault((int)(ScaledShare * (points.Length - 1))));
        var lacking = Math.Max(0, LeastSpan - (high - low));
        high = Math.Min(Math.Max(high, Full), high + (lacking / 2));
        low = Math.Min(low, high - LeastSpan);

        // Room for the dots below and for the dots and their numbers above.
        var perPixel = (high - low) / (height - RoomPixels - ReadingLabels.DotPixels);
        return (low - (ReadingLabels.DotPixels * perPixel), high + (RoomPixels * perPixel));
    }
}
