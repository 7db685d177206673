using PulseStream.Accuracy;
using PulseStream.Accuracy.Criteria;
using PulseStream.Accuracy.Statistics;
using ScottPlot;
using ScottPlot.TickGenerators;

namespace PulseStream.Plots.Bench;

/// <summary>The figures of a statement of accuracy.</summary>
public static class AccuracyFigures
{
    private const double BarHalfWidth = 0.3;

    /// <summary>Bland-Altman, error over reference, A_rms by band, cumulative error. The caller disposes them.</summary>
    /// <param name="statement">The statement.</param>
    public static IReadOnlyList<Figure> Of(AccuracyStatement statement)
    {
        ArgumentNullException.ThrowIfNull(statement);
        return [BlandAltman(statement), ErrorOverReference(statement), ArmsByBand(statement), CumulativeError(statement)];
    }

    private static Figure BlandAltman(AccuracyStatement statement)
    {
        double[] means = [.. statement.Pairs.Select(pair => (pair.Reading + pair.Reference) / 2)];
        var errors = ErrorsOf(statement);
        var limits = statement.Limits;
        var (left, right) = FigurePlot.Around(means);
        var (bottom, top) = FigurePlot.Around([.. errors, 0, limits?.LowInterval.Low ?? 0, limits?.HighInterval.High ?? 0]);
        const string title = "Difference over mean, with 95 % limits of agreement and their intervals";
        var plot = FigurePlot.New(title, $"Mean of reading and reference ({Unit(statement)})", ErrorLabel(statement), new(left, right, bottom, top), hasNames: true);
        if (limits is not null)
        {
            FigurePlot.AddBand(plot, limits.LowInterval.Low, limits.LowInterval.High, Palette.Vermilion);
            FigurePlot.AddBand(plot, limits.HighInterval.Low, limits.HighInterval.High, Palette.Vermilion);
            FigurePlot.AddLevel(plot, limits.Low, Palette.Vermilion);
            FigurePlot.AddLevel(plot, limits.High, Palette.Vermilion);
        }

        if (statement.BiasInterval is { } interval)
        {
            FigurePlot.AddBand(plot, interval.Low, interval.High, Palette.Green);
        }

        FigurePlot.AddLevel(plot, statement.All.Bias!.Value, Palette.Green);
        FigurePlot.AddPoints(plot, means, errors, Palette.Blue);
        FigurePlot.NameValues(plot, "", limits is null
            ? [(statement.All.Bias.Value, $"bias {statement.All.Bias:0.00}")]
            : [(limits.Low, $"limit {limits.Low:0.00}"), (statement.All.Bias.Value, $"bias {statement.All.Bias:0.00}"), (limits.High, $"limit {limits.High:0.00}")]);
        return new("bland-altman", title, plot);
    }

    private static Figure ErrorOverReference(AccuracyStatement statement)
    {
        double[] references = [.. statement.Pairs.Select(pair => pair.Reference)];
        var errors = ErrorsOf(statement);
        var (left, right) = FigurePlot.Around(references);
        var (bottom, top) = FigurePlot.Around([.. errors, 0]);
        const string title = "Error over reference: deeper colour where more pairs lie";
        var plot = FigurePlot.New(title, $"Reference ({Unit(statement)})", ErrorLabel(statement), new(left, right, bottom, top), hasNames: true);
        FigurePlot.AddLevel(plot, 0, Palette.Frame);
        FigurePlot.AddPoints(plot, references, errors, Palette.Blue);
        if (statement.Regression is { } line)
        {
            double[] ends = [references.Min(), references.Max()];
            double[] values = [.. ends.Select(end => line.Intercept + (line.Slope * end))];
            FigurePlot.AddLine(plot, ends, values, Palette.Vermilion);
            FigurePlot.NameValues(plot, "", [(values[1], $"slope {line.Slope:0.000}")]);
        }

        return new("error-over-reference", title, plot);
    }

    private static Figure ArmsByBand(AccuracyStatement statement)
    {
        var bands = statement.Bands;
        var limits = LimitsOf(statement);
        var highest = bands.Select(band => Math.Min(band.ArmsInterval?.High ?? 0, 2 * band.Measures.Arms!.Value)).Concat(bands.Select(band => band.Measures.Arms!.Value)).Concat(limits.Select(limit => limit.Value)).Max();
        var title = "A_rms by band of the reference, with 95 % intervals and limits";
        var plot = FigurePlot.New(title, $"Reference ({Unit(statement)})", $"A_rms ({ErrorUnit(statement)})", new(-0.6, bands.Count - 0.4, 0, highest * 1.12), hasNames: true);
        for (var i = 0; i < bands.Count; i++)
        {
            AddBar(plot, i, bands[i]);
        }

        foreach (var (value, _) in limits)
        {
            FigurePlot.AddLevel(plot, value, Palette.Vermilion);
        }

        FigurePlot.NameValues(plot, "limit ", limits);
        plot.Axes.Bottom.TickGenerator = new NumericManual([.. Enumerable.Range(0, bands.Count).Select(i => (double)i)], [.. bands.Select(band => $"{band.From:0.##}–{band.To:0.##}\nn {band.Measures.Count}")]);
        return new("arms-by-band", title, plot);
    }

    private static void AddBar(Plot plot, int at, Band band)
    {
        var bar = plot.Add.Rectangle(at - BarHalfWidth, at + BarHalfWidth, 0, band.Measures.Arms!.Value);
        bar.FillColor = Palette.SkyBlue;
        bar.LineWidth = 0;
        if (band.ArmsInterval is { } interval)
        {
            FigurePlot.AddLine(plot, [at, at], [interval.Low, interval.High], Palette.Ink);
        }
    }

    private static Figure CumulativeError(AccuracyStatement statement)
    {
        double[] sizes = [.. ErrorsOf(statement).Select(Math.Abs).Order()];
        double[] shares = [.. sizes.Select((_, i) => 100.0 * (i + 1) / sizes.Length)];
        const string title = "Share of pairs whose error is no larger";
        var right = Math.Max(1, sizes[^1] * 1.05);
        var plot = FigurePlot.New(title, $"Size of the error ({ErrorUnit(statement)})", "Share of pairs (%)", new(0, right, 0, 103), hasNames: false);
        FigurePlot.AddLine(plot, [0, .. sizes.SelectMany(size => new[] { size, size })], [0, 0, .. shares.SkipLast(1).SelectMany(share => new[] { share, share }), 100], Palette.Blue);
        return new("cumulative-error", title, plot);
    }

    private static (double Value, string Name)[] LimitsOf(AccuracyStatement statement) =>
    [
        .. statement.Criteria.Where(judged => judged.Criterion.Measure == CriterionMeasure.Arms)
            .Select(judged => judged.Limit).Distinct().Select(limit => (limit, $"{limit:0.0#}")),
    ];

    private static double[] ErrorsOf(AccuracyStatement statement) => [.. statement.Pairs.Select(pair => pair.Error)];

    private static string Unit(AccuracyStatement statement) => statement.Quantity == Quantity.Saturation ? "SpO₂, %" : "pulse rate, 1/min";

    private static string ErrorUnit(AccuracyStatement statement) => statement.Quantity == Quantity.Saturation ? "percentage points" : "1/min";

    private static string ErrorLabel(AccuracyStatement statement) => $"Reading − reference ({ErrorUnit(statement)})";
}
