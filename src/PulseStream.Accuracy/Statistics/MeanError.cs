namespace PulseStream.Accuracy.Statistics;

/// <summary>The mean error of a study with its uncertainty, by leaving out one subject at a time.</summary>
/// <param name="Bias">Mean error over all pairs.</param>
/// <param name="Variance">Of the bias; null where there are fewer than two subjects.</param>
/// <param name="Subjects">How many.</param>
internal readonly record struct MeanError(double Bias, double? Variance, int Subjects)
{
    /// <summary>With one pair a subject this is the textbook's s/√n with n − 1 degrees of freedom, to the last digit.</summary>
    public ConfidenceInterval? Interval => Variance is { } variance
        ? ConfidenceInterval.Around(Bias, StudentT.TwoSided95(Subjects - 1) * Math.Sqrt(variance))
        : null;

    public static MeanError Of(ReadOnlySpan<SubjectSums> subjects)
    {
        var total = SubjectSums.Total(subjects);
        var bias = total.Sum / total.Count;
        if (subjects.Length < 2)
        {
            return new(bias, null, subjects.Length);
        }

        var (mean, squares) = (0.0, 0.0);
        foreach (var subject in subjects)
        {
            mean += BiasWithout(total, subject) / subjects.Length;
        }

        foreach (var subject in subjects)
        {
            squares += Math.Pow(BiasWithout(total, subject) - mean, 2);
        }

        return new(bias, squares * (subjects.Length - 1) / subjects.Length, subjects.Length);
    }

    private static double BiasWithout(in SubjectSums total, in SubjectSums subject) => (total.Sum - subject.Sum) / (total.Count - subject.Count);
}
