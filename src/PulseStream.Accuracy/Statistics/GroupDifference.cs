namespace PulseStream.Accuracy.Statistics;

/// <summary>The largest difference in bias between two groups.</summary>
/// <param name="Higher">The group that reads higher.</param>
/// <param name="Lower">The group that reads lower.</param>
/// <param name="Difference">Bias of the higher less that of the lower, 0 or more.</param>
/// <param name="Interval">
/// Interval that holds for every pair of groups at once, since the largest was picked (Šidák); with two groups it is the
/// ordinary one. Null where one of the two has a single subject.
/// </param>
public sealed record GroupDifference(string Higher, string Lower, double Difference, ConfidenceInterval? Interval)
{
    private const double Level = 0.95;

    /// <summary>The largest difference between groups.</summary>
    /// <param name="groups">The groups.</param>
    /// <returns>Null where there are fewer than two.</returns>
    public static GroupDifference? Of(IReadOnlyList<SkinGroup> groups)
    {
        ArgumentNullException.ThrowIfNull(groups);
        if (groups.Count < 2)
        {
            return null;
        }

        var higher = groups.MaxBy(group => group.Measures.Bias)!;
        var lower = groups.Where(group => group != higher).MinBy(group => group.Measures.Bias)!;
        var difference = higher.Measures.Bias!.Value - lower.Measures.Bias!.Value;
        return new(higher.Name, lower.Name, difference, IntervalOf(difference, higher, lower, groups.Count * (groups.Count - 1) / 2));
    }

    // B. L. Welch, Biometrika 1947;34:28-35: each group has a scatter of its own.
    private static ConfidenceInterval? IntervalOf(double difference, SkinGroup a, SkinGroup b, int comparisons)
    {
        if (a.BiasVariance is not { } first || b.BiasVariance is not { } second || !(first + second > 0))
        {
            return null;
        }

        var freedom = Math.Pow(first + second, 2)
            / ((first * first / (a.Measures.Subjects - 1)) + (second * second / (b.Measures.Subjects - 1)));
        var level = Math.Pow(Level, 1.0 / comparisons);
        return ConfidenceInterval.Around(difference, StudentT.Quantile(1 - ((1 - level) / 2), freedom) * Math.Sqrt(first + second));
    }
}
