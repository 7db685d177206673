namespace PulseStream.Comparison;

/// <summary>Two runs over the same recordings: what changed in each, worst first, and overall.</summary>
/// <param name="Recordings">Lost alarms first, then gained ones, then moved readings, then what stayed the same.</param>
public sealed record RunComparison(IReadOnlyList<RecordingComparison> Recordings)
{
    /// <summary>Recordings whose results cannot be read.</summary>
    public int Unreadable => Recordings.Count(row => row.IsUnreadable);

    /// <summary>Readings that vanished.</summary>
    public int OnlyA => Recordings.Sum(row => row.OnlyA);

    /// <summary>Readings that appeared.</summary>
    public int OnlyB => Recordings.Sum(row => row.OnlyB);

    /// <summary>The largest change of a reading, in points without sign; null where no recording has both runs.</summary>
    public int? LargestMove => Recordings.Max(row => row.LargestMove);

    /// <summary>Readings of both runs that have another value in B.</summary>
    public int MovedReadings => Recordings.Sum(row => row.MovedReadings);

    /// <summary>Share of all seconds that A could use; null where not known.</summary>
    public double? UsedA { get; private init; }

    /// <summary>The same of B.</summary>
    public double? UsedB { get; private init; }

    /// <summary>Compares two runs.</summary>
    /// <param name="a">Results of the first.</param>
    /// <param name="b">Results of the second.</param>
    /// <param name="options">What counts as the same.</param>
    public static RunComparison Of(IReadOnlyList<RecordingResults> a, IReadOnlyList<RecordingResults> b, ComparisonOptions options)
    {
        ArgumentNullException.ThrowIfNull(a);
        ArgumentNullException.ThrowIfNull(b);
        var rows = Pairing.Of(a, b)
            .Select(pair => RecordingComparison.Of(pair.A, pair.B, options))
            .OrderByDescending(row => row.Verdict)
            .ThenBy(row => row.Verdict == Verdict.Lost ? row.AdviceRise : -row.AdviceRise)
            .ThenByDescending(row => row.LargestMove ?? 0)
            .ThenByDescending(row => row.OnlyA + row.OnlyB)
            .ThenBy(row => row.Recording, StringComparer.Ordinal);
        return new RunComparison([.. rows]) { UsedA = ShareOf(a), UsedB = ShareOf(b) };
    }

    /// <summary>Recordings with a verdict.</summary>
    /// <param name="verdict">Which.</param>
    public int Count(Verdict verdict) => Recordings.Count(row => row.Verdict == verdict);

    private static double? ShareOf(IReadOnlyList<RecordingResults> run) =>
        run.Sum(results => results.Seconds) is var seconds and > 0 ? (double)run.Sum(results => results.UsableSeconds) / seconds : null;
}
