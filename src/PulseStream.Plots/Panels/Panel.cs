using PulseStream.Readings;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace PulseStream.Plots.Panels;

/// <summary>One panel of a picture: the drawing library's plot in the house's looks, with the picture's time axis.</summary>
internal sealed class Panel : IDisposable
{
    /// <summary>Left of the data: the longest name of a reason fits.</summary>
    public const float LeftPixels = 128;

    /// <summary>Right of the data: half of the last time fits.</summary>
    public const float RightPixels = 28;

    /// <summary>Below the data, where times are written.</summary>
    public const float TimesPixels = 24;

    private const float LetterSize = 13;
    private const float MessageSize = 15;
    private const float LineThickness = 1.6f;
    private const float PixelsPerTime = 84;
    private const float PixelsPerValue = 34;

    // A value at the very edge would stand beside the panel's title.
    private const float EdgePixels = 7;

    private readonly PanelArea area;

    /// <summary>An empty panel.</summary>
    /// <param name="area">Its place.</param>
    /// <param name="low">Lower end of the values.</param>
    /// <param name="high">Upper end of the values.</param>
    /// <param name="mostWritten">The largest value that is written at the left, where there is a limit to what can be.</param>
    public Panel(PanelArea area, double low, double high, double mostWritten = double.PositiveInfinity)
    {
        this.area = area;
        Plot.FigureBackground.Color = Colors.Transparent;
        Plot.DataBackground.Color = Colors.White;
        Plot.RenderManager.ClearCanvasBeforeEachRender = false;
        Plot.Layout.Fixed(new PixelPadding(LeftPixels, RightPixels, area.HasTimes ? TimesPixels : 0, 0));
        Plot.Axes.SetLimits(0, area.EndSeconds, low, high);
        Plot.Grid.MajorLineColor = Palette.Grid;
        foreach (var axis in Plot.Axes.GetAxes())
        {
            axis.TickLabelStyle.FontName = ShippedFont.Name;
            axis.TickLabelStyle.FontSize = LetterSize;
            axis.TickLabelStyle.ForeColor = Palette.Ink;
            axis.FrameLineStyle.Color = Palette.Frame;
            axis.FrameLineStyle.Width = 1;
            axis.MajorTickStyle.Length = 0;
            axis.MinorTickStyle.Length = 0;
        }

        var times = NiceTicks.Times(area.EndSeconds, Math.Max(1, (int)(area.DataWidth / PixelsPerTime)));
        Plot.Axes.Bottom.TickGenerator = new NumericManual(times, [.. times.Select(t => area.HasTimes ? $"{t:0.###}" : string.Empty)]);
        var edge = EdgePixels * (high - low) / area.Height;
        var values = NiceTicks.Between(low + edge, Math.Min(high - edge, mostWritten), Math.Max(3, (int)(area.Height / PixelsPerValue)));
        SetNames(values, [.. values.Select(v => $"{v:0.######}")]);
    }

    /// <summary>The drawing library's plot.</summary>
    public Plot Plot { get; } = new();

    /// <summary>Says what is written at the left.</summary>
    /// <param name="values">Where.</param>
    /// <param name="names">What.</param>
    public void SetNames(double[] values, string[] names) => Plot.Axes.Left.TickGenerator = new NumericManual(values, names);

    /// <summary>Lays grey over the refused seconds.</summary>
    /// <param name="seconds">All of them.</param>
    public void ShadeRefused(IEnumerable<Second> seconds)
    {
        foreach (var run in SecondRun<bool>.Of(seconds, second => second.IsUsable ? null : true))
        {
            var span = Plot.Add.HorizontalSpan(run.From, run.To, Palette.Refused);
            span.LineWidth = 0;
        }
    }

    /// <summary>Draws a value a second, each at the middle of its second, the first and last reaching the run's ends.</summary>
    /// <param name="run">The values.</param>
    /// <param name="colour">Of the line.</param>
    public void AddLine(SecondRun<double> run, Color colour)
    {
        var line = Plot.Add.ScatterLine(TimesOf(run), [run.Points[0], .. run.Points, run.Points[^1]], colour);
        line.LineWidth = LineThickness;
    }

    /// <summary>Draws the lines of all runs, or says why there is none.</summary>
    /// <param name="runs">The runs.</param>
    /// <param name="colour">Of the lines.</param>
    /// <param name="message">One sentence for an empty panel.</param>
    public void AddLines(IReadOnlyCollection<SecondRun<double>> runs, Color colour, string message)
    {
        foreach (var run in runs)
        {
            AddLine(run, colour);
        }

        if (runs.Count == 0)
        {
            Say(message);
        }
    }

    /// <summary>Times of a run's ends and of the middles of its seconds.</summary>
    /// <param name="run">The run.</param>
    /// <typeparam name="T">What is known of each second.</typeparam>
    public static double[] TimesOf<T>(SecondRun<T> run)
        where T : struct => [run.From, .. Enumerable.Range(0, run.Points.Count).Select(i => run.From + i + 0.5), run.To];

    /// <summary>Says in the middle of an empty panel why it is empty.</summary>
    /// <param name="message">One sentence.</param>
    public void Say(string message)
    {
        var limits = Plot.Axes.GetLimits();
        var text = Plot.Add.Text(message, limits.HorizontalCenter, limits.VerticalCenter);
        text.LabelFontName = ShippedFont.Name;
        text.LabelFontSize = MessageSize;
        text.LabelFontColor = Palette.Soft;
        text.LabelBackgroundColor = Colors.White;
        text.LabelPadding = 6;
        text.LabelAlignment = Alignment.MiddleCenter;
    }

    /// <summary>Draws the panel.</summary>
    /// <param name="canvas">Where the whole picture is drawn.</param>
    public void Render(SkiaSharp.SKCanvas canvas) =>
        Plot.Render(canvas, new PixelRect(area.Left, area.Right, area.Top + area.Height + (area.HasTimes ? TimesPixels : 0), area.Top));

    /// <inheritdoc/>
    public void Dispose() => Plot.Dispose();
}
