namespace PulseStream.Plots.Panels;

/// <summary>The pulse rate.</summary>
internal static class PulsePanel
{
    // A steady pulse must not look like a race.
    private const double LeastSpan = 20;
    private const double Margin = 0.08;
    private const double EmptyLow = 30;
    private const double EmptyHigh = 130;

    /// <summary>What stands above it.</summary>
    public static PanelText Text { get; } = new("Pulse rate (1/min)", "grey: refused");

    /// <summary>Draws it.</summary>
    /// <param name="content">The session.</param>
    /// <param name="area">Its place.</param>
    public static Panel Draw(SessionContent content, PanelArea area)
    {
        var runs = SecondRun<double>.Of(content.Seconds, second => second.Usable?.PulseRatePerMinute).ToArray();
        var (low, high) = ScaleOf(runs.SelectMany(run => run.Points).ToArray());
        var panel = new Panel(area, low, high);
        panel.ShadeRefused(content.Seconds);
        panel.AddLines(runs, Palette.Green, "No second gave a pulse rate.");
        return panel;
    }

    private static (double Low, double High) ScaleOf(double[] rates)
    {
        if (rates.Length == 0)
        {
            return (EmptyLow, EmptyHigh);
        }

        var lacking = Math.Max(0, LeastSpan - (rates.Max() - rates.Min()));
        var low = rates.Min() - (lacking / 2);
        var high = rates.Max() + (lacking / 2);
        var margin = Margin * (high - low);
        return (low - margin, high + margin);
    }
}
