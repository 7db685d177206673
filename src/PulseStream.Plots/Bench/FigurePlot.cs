using ScottPlot;
using ScottPlot.TickGenerators;

namespace PulseStream.Plots.Bench;

/// <summary>An empty plot in the house's looks, with what several figures need.</summary>
internal static class FigurePlot
{
    private const float LetterSize = 14;
    private const float TitleSize = 16;
    private const float LineThickness = 1.8f;
    private const int MostTicks = 9;
    private const float RightPixels = 24;
    private const float NamesPixels = 150;
    private const float LeftPixels = 76;
    private const float BottomPixels = 72;
    private const float TopPixels = 46;

    // Of the height: nearer names would touch.
    private const double NameRoom = 0.045;

    /// <summary>A plot with its axes.</summary>
    /// <param name="title">Above it.</param>
    /// <param name="x">Name and unit below.</param>
    /// <param name="y">Name and unit at the left.</param>
    /// <param name="limits">Range of both axes.</param>
    /// <param name="hasNames">Whether lines are named at the right.</param>
    /// <param name="topPixels">Room for the title.</param>
    public static Plot New(string title, string x, string y, AxisLimits limits, bool hasNames = false, float topPixels = TopPixels)
    {
        var plot = new Plot();
        plot.Font.Set(ShippedFont.Name);
        plot.FigureBackground.Color = Colors.White;
        plot.DataBackground.Color = Colors.White;
        plot.Grid.MajorLineColor = Palette.Grid;
        plot.Layout.Fixed(new PixelPadding(LeftPixels, hasNames ? NamesPixels : RightPixels, BottomPixels, topPixels));
        plot.Axes.SetLimits(limits);
        plot.Axes.Title.Label.Text = title;
        plot.Axes.Title.Label.FontSize = TitleSize;
        plot.Axes.Title.Label.ForeColor = Palette.Ink;
        plot.XLabel(x, LetterSize);
        plot.YLabel(y, LetterSize);
        foreach (var axis in plot.Axes.GetAxes())
        {
            axis.TickLabelStyle.FontSize = LetterSize;
            axis.TickLabelStyle.ForeColor = Palette.Ink;
            axis.FrameLineStyle.Color = Palette.Frame;
            axis.MajorTickStyle.Length = 0;
            axis.MinorTickStyle.Length = 0;
        }

        SetTicks(plot.Axes.Bottom, limits.Left, limits.Right);
        SetTicks(plot.Axes.Left, limits.Bottom, limits.Top);
        return plot;
    }

    /// <summary>Names values at the right; names that would touch share a place.</summary>
    public static void NameValues(Plot plot, string word, IEnumerable<(double Value, string Name)> values)
    {
        var limits = plot.Axes.GetLimits();
        var room = NameRoom * limits.VerticalSpan;
        var placed = new List<(double At, double Last, string Name)>();
        foreach (var (value, name) in values.Where(value => value.Value >= limits.Bottom && value.Value <= limits.Top).OrderBy(value => value.Value))
        {
            if (placed.Count > 0 && value - placed[^1].Last < room)
            {
                placed[^1] = ((placed[^1].At + value) / 2, value, $"{placed[^1].Name}, {name}");
            }
            else
            {
                placed.Add((value, value, $"{word}{name}"));
            }
        }

        plot.Axes.SetLimitsY(limits.Bottom, limits.Top, plot.Axes.Right);
        plot.Axes.Right.TickGenerator = new NumericManual([.. placed.Select(name => name.At)], [.. placed.Select(name => name.Name)]);
    }

    /// <summary>A line across the plot. All lines are solid: the drawing library's SVG knows no others.</summary>
    public static void AddLevel(Plot plot, double value, Color colour)
    {
        var line = plot.Add.HorizontalLine(value, LineThickness, colour);
        line.ExcludeFromLegend = true;
    }

    /// <summary>A band across the plot.</summary>
    public static void AddBand(Plot plot, double low, double high, Color colour)
    {
        var span = plot.Add.VerticalSpan(low, high, colour.WithAlpha(0.18));
        span.LineWidth = 0;
    }

    /// <summary>Points; where many lie on each other the colour deepens.</summary>
    public static void AddPoints(Plot plot, IReadOnlyList<double> x, IReadOnlyList<double> y, Color colour, string? name = null)
    {
        if (x.Count == 0)
        {
            return;
        }

        var alpha = x.Count > 500 ? 0.25 : x.Count > 150 ? 0.45 : 0.7;
        var markers = plot.Add.Markers(x.ToArray(), y.ToArray(), MarkerShape.FilledCircle, 7, colour.WithAlpha(alpha));
        if (name is not null)
        {
            markers.LegendText = name;
        }
    }

    /// <summary>A line through points.</summary>
    public static void AddLine(Plot plot, double[] x, double[] y, Color colour, string? name = null)
    {
        var line = plot.Add.ScatterLine(x, y, colour);
        line.LineWidth = LineThickness;
        if (name is not null)
        {
            line.LegendText = name;
        }
    }

    /// <summary>Says what the lines are, where they leave most room.</summary>
    public static void AddLegend(Plot plot, Alignment corner)
    {
        var legend = plot.ShowLegend(corner);
        legend.FontName = ShippedFont.Name;
        legend.FontSize = LetterSize - 1;
        legend.OutlineColor = Palette.Grid;
        legend.ShadowColor = Colors.Transparent;
    }

    /// <summary>A range with room around the values.</summary>
    public static (double Low, double High) Around(IEnumerable<double> values, double share = 0.07)
    {
        double[] all = [.. values.Where(double.IsFinite).DefaultIfEmpty(0)];
        var (low, high) = (all.Min(), all.Max());
        var room = Math.Max((high - low) * share, 0.5);
        return (low - room, high + room);
    }

    private static void SetTicks(IAxis axis, double low, double high)
    {
        var ticks = NiceTicks.Between(low, high, MostTicks);
        axis.TickGenerator = new NumericManual(ticks, [.. ticks.Select(tick => $"{tick:0.######}")]);
    }
}
