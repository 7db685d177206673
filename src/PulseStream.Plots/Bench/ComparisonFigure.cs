using ScottPlot;

namespace PulseStream.Plots.Bench;

/// <summary>The figure of two runs over the same recordings.</summary>
public static class ComparisonFigure
{
    private const double RoomPoints = 1;
    private const float SmallestMarker = 5;
    private const float LargestMarker = 22;

    /// <summary>Draws the readings of both runs against each other, larger where more are; what lies off the line has moved. The caller disposes it.</summary>
    /// <param name="readings">How many readings of both runs have the values (A, B), in percent; at least one.</param>
    public static Figure Of(IReadOnlyDictionary<(int A, int B), int> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var places = readings.OrderBy(place => place.Key).ToList();
        var all = places.SelectMany(place => new[] { place.Key.A, place.Key.B }).ToList();
        var (low, high) = (all.Min() - RoomPoints, Math.Max(all.Max() + RoomPoints, all.Min() + RoomPoints));
        const string title = "SpO₂ of the same reading in both runs, larger where there are more";
        var plot = FigurePlot.New(title, "A (%)", "B (%)", new AxisLimits(low, high, low, high));
        FigurePlot.AddLine(plot, [low, high], [low, high], Palette.Frame);
        var most = (double)places.Max(place => place.Value);
        foreach (var ((a, b), count) in places)
        {
            // The area of a marker, not its width, tells how many there are.
            var size = SmallestMarker + (float)Math.Sqrt(count / most) * (LargestMarker - SmallestMarker);
            plot.Add.Marker(a, b, MarkerShape.FilledCircle, size, (a == b ? Palette.Blue : Palette.Vermilion).WithAlpha(0.7));
        }

        return new("compare", title, plot);
    }
}
