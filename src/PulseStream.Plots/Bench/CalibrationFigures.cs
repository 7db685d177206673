using PulseStream.Accuracy.Calibration;
using PulseStream.Accuracy.Optics;
using ScottPlot;

namespace PulseStream.Plots.Bench;

/// <summary>The figures of a fitted curve.</summary>
public static class CalibrationFigures
{
    private const int Steps = 200;

    /// <summary>The curve with its pairs, and what is left of them. The caller disposes them.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="theory">Drawn beside it; null for none.</param>
    public static IReadOnlyList<Figure> Of(CurveFit fit, TheoreticalCurve? theory)
    {
        ArgumentNullException.ThrowIfNull(fit);
        return [Curve(fit, theory), Residuals(fit)];
    }

    private static Figure Curve(CurveFit fit, TheoreticalCurve? theory)
    {
        double[] ratios = [.. Enumerable.Range(0, Steps + 1).Select(i => fit.From + ((fit.To - fit.From) * i / Steps))];
        double[] curve = [.. ratios.Select(fit.PercentAt)];
        double[] theoretical = theory is null ? [] : [.. ratios.Select(theory.PercentAt)];
        var (left, right) = FigurePlot.Around(fit.Pairs.Select(pair => pair.Ratio), 0.05);
        var (bottom, top) = FigurePlot.Around([.. fit.Pairs.Select(pair => pair.Reference), .. curve, .. theoretical]);
        var title = $"Calibration: degree {fit.Chosen.Degree}, A_rms on people left out {fit.Chosen.Arms:0.00} points";
        var plot = FigurePlot.New(title, "Ratio of ratios R", "SaO₂ or reference SpO₂ (%)", new(Math.Max(0, left + 0.4), right - 0.4, bottom, top));
        AddPairs(plot, fit, pair => pair.Reference);
        FigurePlot.AddLine(plot, ratios, curve, Palette.Vermilion, "fitted");
        if (theory is not null)
        {
            FigurePlot.AddLine(plot, ratios, theoretical, Palette.Ink, $"theory, {theory.RedNanometres:0.##} and {theory.InfraredNanometres:0.##} nm");
        }

        FigurePlot.AddLegend(plot, Alignment.UpperRight);
        return new("calibration", title, plot);
    }

    private static Figure Residuals(CurveFit fit)
    {
        double Left(RatioPair pair) => pair.Reference - fit.PercentAt(pair.Ratio);
        var kept = fit.Pairs.Where((_, i) => fit.Weights[i] > 0).Select(Left);
        var (left, right) = (fit.From - 0.03, fit.To + 0.03);
        var (bottom, top) = FigurePlot.Around([.. kept, 0]);
        const string title = "What the curve leaves, over R";
        var plot = FigurePlot.New(title, "Ratio of ratios R", "Reference − curve (percentage points)", new(left, right, bottom, top));
        FigurePlot.AddLevel(plot, 0, Palette.Vermilion);
        AddPairs(plot, fit, Left);
        return new("calibration-residuals", title, plot);
    }

    private static void AddPairs(Plot plot, CurveFit fit, Func<RatioPair, double> valueOf)
    {
        foreach (var (isKept, colour, name) in (ReadOnlySpan<(bool, Color, string)>)[(true, Palette.Blue, "pairs"), (false, Palette.Orange, "left aside")])
        {
            var pairs = fit.Pairs.Where((_, i) => (fit.Weights[i] > 0) == isKept).ToArray();
            FigurePlot.AddPoints(plot, [.. pairs.Select(pair => pair.Ratio)], [.. pairs.Select(valueOf)], colour, name);
        }
    }
}
