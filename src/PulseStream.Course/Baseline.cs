using PulseStream.Accuracy.Statistics;

namespace PulseStream.Course;

/// <summary>What is usual for a person.</summary>
/// <param name="Percent">Mean of the values of the baseline.</param>
/// <param name="LowPercent">Lower end of the 95 % interval of that mean; the mean itself where one value is all there is.</param>
/// <param name="HighPercent">Upper end.</param>
/// <param name="Values">How many values it is made of.</param>
public sealed record Baseline(double Percent, double LowPercent, double HighPercent, int Values)
{
    // A value is a whole percent made of decimals: two equal ones may be that far apart (uniform rounding, 1/√12).
    private const double RoundingDeviation = 0.2887;

    /// <summary>Mean and Student's interval of values.</summary>
    /// <param name="values">At least one.</param>
    internal static Baseline Of(IReadOnlyList<double> values)
    {
        var mean = values.Average();
        if (values.Count == 1)
        {
            return new Baseline(mean, mean, mean, 1);
        }

        var deviation = Math.Max(RoundingDeviation, Math.Sqrt(values.Sum(value => (value - mean) * (value - mean)) / (values.Count - 1)));
        var half = StudentT.TwoSided95(values.Count - 1) * deviation / Math.Sqrt(values.Count);
        return new Baseline(mean, Math.Max(0, mean - half), Math.Min(100, mean + half), values.Count);
    }
}
