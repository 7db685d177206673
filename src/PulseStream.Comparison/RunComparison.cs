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

    /// <summary>How many readings of both runs have the values (A, B), in whole percent.</summary>
    public IReadOnlyDictionary<(int A, int B), int> Both { get; private init; } = new Dictionary<(int A, int B), int>();

    /// <summary>Share of all seconds that A could use; null where not known.</summary>
    public double? UsedA => ShareOf(row => row.SecondsA);

    /// <summary>The same of B.</summary>
    public double? UsedB => ShareOf(row => row.SecondsB);

    /// <summary>Puts the rows of two runs together. Of thousands of them it keeps no reading, and a text that many share once.</summary>
    /// <param name="rows">In any order; gone through once.</param>
    public static RunComparison Of(IEnumerable<RecordingComparison> rows)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var (kept, both, texts) = (new List<RecordingComparison>(), new Dictionary<(int A, int B), int>(), new HashSet<string>(StringComparer.Ordinal));
        foreach (var row in rows)
        {
            foreach (var pair in row.Both)
            {
                both[pair] = both.GetValueOrDefault(pair) + 1;
            }

            kept.Add(row.Compact(texts));
        }

        var names = kept.CountBy(row => row.Recording, StringComparer.Ordinal).ToDictionary(StringComparer.Ordinal);
        var ordered = kept
            .Select(row => names[row.Recording] == 1 ? row : row.NamedBySession())
            .OrderByDescending(row => row.Verdict)
            .ThenBy(row => row.Verdict == Verdict.Lost ? row.AdviceRise : -row.AdviceRise)
            .ThenByDescending(row => row.LargestMove ?? 0)
            .ThenByDescending(row => row.OnlyA + row.OnlyB)
            .ThenBy(row => row.Recording, StringComparer.Ordinal);
        return new RunComparison([.. ordered]) { Both = both };
    }

    /// <summary>Recordings with a verdict.</summary>
    /// <param name="verdict">Which.</param>
    public int Count(Verdict verdict) => Recordings.Count(row => row.Verdict == verdict);

    private double? ShareOf(Func<RecordingComparison, (long Usable, long All)> secondsOf) =>
        Recordings.Sum(row => secondsOf(row).All) is var all and > 0 ? (double)Recordings.Sum(row => secondsOf(row).Usable) / all : null;
}
