namespace PulseStream.Accuracy.Statistics;

/// <summary>What a subject adds to the sums over a study; subjects are what chance chose, not pairs.</summary>
/// <param name="Count">Pairs.</param>
/// <param name="Sum">Of the errors.</param>
/// <param name="SquareSum">Of the squared errors.</param>
internal readonly record struct SubjectSums(double Count, double Sum, double SquareSum)
{
    /// <summary>One entry a subject, by name, so that the order of rows does not matter to seeded chance.</summary>
    public static SubjectSums[] Of(IEnumerable<PairedReading> pairs) =>
    [
        .. pairs.GroupBy(pair => pair.Subject, StringComparer.Ordinal)
            .OrderBy(subject => subject.Key, StringComparer.Ordinal)
            .Select(subject => new SubjectSums(subject.Count(), subject.Sum(pair => pair.Error), subject.Sum(pair => pair.Error * pair.Error))),
    ];

    public static SubjectSums Total(ReadOnlySpan<SubjectSums> subjects)
    {
        var (count, sum, squares) = (0.0, 0.0, 0.0);
        foreach (var subject in subjects)
        {
            count += subject.Count;
            sum += subject.Sum;
            squares += subject.SquareSum;
        }

        return new(count, sum, squares);
    }
}
