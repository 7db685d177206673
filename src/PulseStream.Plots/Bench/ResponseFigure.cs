using PulseStream.Accuracy;
using PulseStream.Accuracy.Responses;
using PulseStream.Accuracy.Runs;
using ScottPlot;

namespace PulseStream.Plots.Bench;

/// <summary>The figure of one step and how an instrument followed it.</summary>
public static class ResponseFigure
{
    private const double Before = 10;
    private const double After = 20;

    /// <summary>Draws a step. The caller disposes it.</summary>
    /// <param name="step">The step.</param>
    /// <param name="course">What the instrument showed.</param>
    /// <param name="reference">What the reference showed; null for none.</param>
    /// <param name="number">Which of the steps, for the file's name.</param>
    public static Figure Of(StepResponse step, TimedValues course, TimedValues? reference, int number)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(course);
        var half = step.At + step.DelaySeconds;
        var (left, right) = (step.At - Before, half + step.RiseSeconds + After);
        var (bottom, top) = FigurePlot.Around([.. Within(course, left, right).Values, step.From, step.To], 0.12);
        var name = step.Quantity == Quantity.Saturation ? "SpO₂ (%)" : "Pulse rate (1/min)";
        var title = $"Step response: half-way after {step.DelaySeconds:0.0} s, 10 to 90 % in {step.RiseSeconds:0.0} s, overshoot {step.Overshoot:0.0}";
        var plot = FigurePlot.New(title, "Time (s)", name, new(left, right, bottom, top));
        FigurePlot.AddLevel(plot, step.From, Palette.Grid);
        FigurePlot.AddLevel(plot, step.To, Palette.Grid);
        AddTime(plot, step.At, Palette.Ink, "the step");
        AddTime(plot, half, Palette.Green, "half-way");
        if (reference is not null)
        {
            var shown = Within(reference, left, right);
            FigurePlot.AddLine(plot, shown.Times, shown.Values, Palette.Frame, "reference");
        }

        var own = Within(course, left, right);
        FigurePlot.AddLine(plot, own.Times, own.Values, Palette.Blue, "instrument");
        FigurePlot.AddLegend(plot, step.To < step.From ? Alignment.UpperRight : Alignment.LowerRight);
        return new($"step-{number:00}-{QuantityScale.Of(step.Quantity).Name}", title, plot);
    }

    private static void AddTime(Plot plot, double seconds, Color colour, string name)
    {
        var line = plot.Add.VerticalLine(seconds, 1.5f, colour);
        line.LegendText = name;
    }

    private static (double[] Times, double[] Values) Within(TimedValues course, double left, double right)
    {
        int[] kept = [.. Enumerable.Range(0, course.Times.Count).Where(i => course.Times[i] >= left && course.Times[i] <= right)];
        return ([.. kept.Select(i => course.Times[i])], [.. kept.Select(i => course.Values[i])]);
    }
}
