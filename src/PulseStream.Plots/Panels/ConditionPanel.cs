using System.Text;
using PulseStream.Readings;
using ScottPlot;

namespace PulseStream.Plots.Panels;

/// <summary>The condition strip: a row for each reason that occurs.</summary>
internal static class ConditionPanel
{
    // Half of a bar's height in rows. A warning is lower as well as lighter: colour never speaks alone.
    private const double RefusalHalf = 0.38;
    private const double WarningHalf = 0.2;
    private const double WarningOpacity = 0.55;

    /// <summary>What stands above it.</summary>
    /// <param name="reasons">The reasons that occur.</param>
    public static PanelText TextOf(IReadOnlyList<Reasons> reasons) => new(
        "Condition",
        reasons.Count == 0 ? "nothing refused, nothing to warn of" : "tall dark bar: refused · low light bar: usable, with a warning");

    /// <summary>The reasons that occur, in their own order.</summary>
    /// <param name="seconds">The seconds.</param>
    public static IReadOnlyList<Reasons> ReasonsIn(IReadOnlyList<Second> seconds)
    {
        var all = seconds.Aggregate(Reasons.None, (found, second) => found | RefusalsOf(second) | WarningsOf(second));
        return [.. Enum.GetValues<Reasons>().Where(reason => reason != Reasons.None && all.HasFlag(reason))];
    }

    /// <summary>Draws it.</summary>
    /// <param name="content">The session.</param>
    /// <param name="reasons">The reasons that occur.</param>
    /// <param name="area">Its place.</param>
    public static Panel Draw(SessionContent content, IReadOnlyList<Reasons> reasons, PanelArea area)
    {
        var rows = Math.Max(1, reasons.Count);
        var panel = new Panel(area, -rows + 0.5, 0.5);
        panel.SetNames([.. reasons.Select((_, row) => (double)-row)], [.. reasons.Select(NameOf)]);
        if (reasons.Count == 0)
        {
            panel.Say(content.Seconds.Count == 0 ? "No whole second in this session." : "Every second was usable.");
        }

        for (var row = 0; row < reasons.Count; row++)
        {
            var reason = reasons[row];
            AddBars(panel, content.Seconds, s => WarningsOf(s).HasFlag(reason), -row, WarningHalf, Palette.Of(reason).WithOpacity(WarningOpacity));
            AddBars(panel, content.Seconds, s => RefusalsOf(s).HasFlag(reason), -row, RefusalHalf, Palette.Of(reason));
        }

        return panel;
    }

    private static void AddBars(Panel panel, IEnumerable<Second> seconds, Func<Second, bool> applies, double middle, double half, Color colour)
    {
        foreach (var run in SecondRun<bool>.Of(seconds, second => applies(second) ? true : null))
        {
            var bar = panel.Plot.Add.Rectangle(run.From, run.To, middle - half, middle + half);
            bar.FillColor = colour;

            // A line keeps a lone second in sight where a pixel is many seconds.
            bar.LineColor = colour;
            bar.LineWidth = 1;
        }
    }

    private static Reasons RefusalsOf(Second second) => second.Unusable?.Reasons ?? Reasons.None;

    private static Reasons WarningsOf(Second second) => second.Usable?.Warnings ?? Reasons.None;

    // NoFinger becomes "no finger".
    private static string NameOf(Reasons reason)
    {
        var name = new StringBuilder();
        foreach (var letter in reason.ToString())
        {
            name.Append(char.IsUpper(letter) && name.Length > 0 ? " " : string.Empty).Append(char.ToLowerInvariant(letter));
        }

        return name.ToString();
    }
}
