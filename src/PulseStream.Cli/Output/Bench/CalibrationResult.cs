using PulseStream.Accuracy.Calibration;
using PulseStream.Accuracy.Optics;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A fitted curve as one JSON object and for people.</summary>
internal static class CalibrationResult
{
    private const int Steps = 100;

    public static void Print(Stream output, CurveFit fit, string name, TheoreticalCurve? theory)
    {
        using var line = new JsonLine(output, "calibration");
        line.Text("name", name).Whole("degree", fit.Chosen.Degree).Numbers("coefficients", fit.Coefficients)
            .Number("arms", fit.Chosen.Arms).Whole("n", fit.Pairs.Count).Whole("subjects", fit.Subjects)
            .Number("from", fit.From).Number("to", fit.To).Whole("outliers", fit.Outliers).Number("armsOfAll", fit.Chosen.ArmsOfAll)
            .List("tried", fit.Tried, (inner, tried) => inner.Whole("degree", tried.Degree).Number("arms", tried.Arms));
        if (theory is not null)
        {
            var (least, most) = DifferenceFrom(theory, fit);
            line.Object("theory", inner => inner.Number("red", theory.RedNanometres).Number("infrared", theory.InfraredNanometres).Number("least", least).Number("most", most));
        }
    }

    public static IEnumerable<string> Lines(CurveFit fit, string name, TheoreticalCurve? theory)
    {
        yield return $"Curve '{name}': {fit.Pairs.Count} pairs of {fit.Subjects} subjects";
        yield return "";
        yield return $"  SpO2 = {Formula(fit.Coefficients)}   for R from {fit.From:0.###} to {fit.To:0.###}";
        yield return $"  A_rms expected on people who are not among them: {fit.Chosen.Arms:0.00} points";
        yield return "  (each subject judged by the curve of the others)";
        foreach (var tried in fit.Tried)
        {
            yield return $"  degree {tried.Degree}: {tried.Arms:0.00} points{(tried == fit.Chosen ? ", taken" : "")}";
        }

        if (fit.Outliers > 0)
        {
            yield return $"  {fit.Outliers} {(fit.Outliers == 1 ? "pair was" : "pairs were")} left aside as outliers; with them A_rms is {fit.Chosen.ArmsOfAll:0.00} points.";
        }

        if (theory is not null)
        {
            var (least, most) = DifferenceFrom(theory, fit);
            yield return $"  Theory at {theory.RedNanometres:0.##} and {theory.InfraredNanometres:0.##} nm (Beer-Lambert, equal path lengths) gives";
            yield return $"  {least:+0.0;-0.0} to {most:+0.0;-0.0} points of difference from the curve over its range.";
        }
    }

    private static string Formula(IReadOnlyList<double> coefficients) => coefficients.Skip(1)
        .Select((value, i) => $" {(value < 0 ? "-" : "+")} {Math.Abs(value):0.000} R{(i == 0 ? "" : $"^{i + 1}")}")
        .Aggregate($"{coefficients[0]:0.000}", string.Concat);

    private static (double Least, double Most) DifferenceFrom(TheoreticalCurve theory, CurveFit fit)
    {
        var differences = Enumerable.Range(0, Steps + 1)
            .Select(i => fit.From + ((fit.To - fit.From) * i / Steps))
            .Select(ratio => theory.PercentAt(ratio) - fit.PercentAt(ratio))
            .ToArray();
        return (differences.Min(), differences.Max());
    }
}
