using PulseStream.Readings;

namespace PulseStream.Plots.Panels;

/// <summary>The perfusion of usable seconds, and of those refused for it alone.</summary>
internal static class PerfusionPanel
{
    // A perfusion below 1 % has to look low.
    private const double LeastHigh = 1;
    private const double Margin = 0.15;

    /// <summary>What stands above it.</summary>
    public static PanelText Text { get; } = new("Perfusion (% of the infrared light)", "grey: refused");

    /// <summary>Draws it.</summary>
    /// <param name="content">The session.</param>
    /// <param name="area">Its place.</param>
    public static Panel Draw(SessionContent content, PanelArea area)
    {
        var runs = SecondRun<double>.Of(content.Seconds, PerfusionOf).ToArray();
        var high = Math.Max(LeastHigh, runs.SelectMany(run => run.Points).DefaultIfEmpty().Max());
        var panel = new Panel(area, 0, (1 + Margin) * high);
        panel.ShadeRefused(content.Seconds);
        panel.AddLines(runs, Palette.Blue, "No second gave a perfusion.");
        return panel;
    }

    // Movement and light that leaks past make a number of it that says nothing of the blood.
    private static double? PerfusionOf(Second second) => second switch
    {
        { Usable: { } usable } => usable.PerfusionPercent,
        { Unusable: { Reasons: Reasons.LowPerfusion } weak } => weak.PerfusionPercent,
        _ => null,
    };
}
