namespace PulseStream.Accuracy.Statistics;

/// <summary>The pairs of subjects of one skin tone.</summary>
/// <param name="Name">As the study names it.</param>
/// <param name="Measures">Of these pairs.</param>
/// <param name="BiasInterval">Interval of the bias; null where the group has one subject.</param>
/// <param name="ArmsInterval">Interval of A_rms; null likewise.</param>
public sealed record SkinGroup(string Name, Measures Measures, ConfidenceInterval? BiasInterval, ConfidenceInterval? ArmsInterval)
{
    internal double? BiasVariance { get; private init; }

    /// <summary>The groups of those pairs whose skin tone is told, by name.</summary>
    /// <param name="pairs">The pairs.</param>
    public static IReadOnlyList<SkinGroup> Of(IEnumerable<PairedReading> pairs) =>
    [
        .. pairs.Where(pair => pair.SkinTone is not null)
            .GroupBy(pair => pair.SkinTone!, StringComparer.Ordinal)
            .OrderBy(group => group.Key, StringComparer.Ordinal)
            .Select(group => Of(group.Key, [.. group])),
    ];

    private static SkinGroup Of(string name, PairedReading[] pairs)
    {
        var subjects = SubjectSums.Of(pairs);
        var error = MeanError.Of(subjects);
        return new(name, Measures.Of(pairs), error.Interval, RootInterval.OfArms(subjects)) { BiasVariance = error.Variance };
    }
}
