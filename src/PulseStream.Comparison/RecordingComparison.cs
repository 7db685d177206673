using PulseStream.Triage;

namespace PulseStream.Comparison;

/// <summary>What changed in one recording from the first run (A) to the second (B).</summary>
/// <param name="Recording">Its name.</param>
/// <param name="Verdict">The worst of it.</param>
/// <param name="OnlyA">Readings that vanished.</param>
/// <param name="OnlyB">Readings that appeared.</param>
/// <param name="LargestMove">The largest change of a reading that both have, in points without sign; null where one run lacks the recording.</param>
/// <param name="MovedFrom">The reading of A with the largest change; null where none has changed.</param>
/// <param name="MovedTo">The same reading in B.</param>
/// <param name="UsedA">Share of the seconds that A could use, 0 to 1; null where not known.</param>
/// <param name="UsedB">The same of B.</param>
/// <param name="AdviceA">The most urgent advice of A; null where it gave none.</param>
/// <param name="AdviceB">The same of B.</param>
/// <param name="Problem">Why one run's results are missing, as a sentence; null where both are there.</param>
public sealed record RecordingComparison(
    string Recording,
    Verdict Verdict,
    int OnlyA,
    int OnlyB,
    int? LargestMove,
    AcceptedValue? MovedFrom,
    AcceptedValue? MovedTo,
    double? UsedA,
    double? UsedB,
    AdviceLevel? AdviceA,
    AdviceLevel? AdviceB,
    string? Problem)
{
    /// <summary>Whether results that are there could not be read.</summary>
    public bool IsUnreadable { get; private init; }

    /// <summary>Readings of both runs as (A, B), in whole percent; none once the row stands among others, where <see cref="RunComparison.Both"/> counts them.</summary>
    public IReadOnlyList<(int A, int B)> Both { get; private init; } = [];

    /// <summary>Readings of both runs that have another value in B.</summary>
    public int MovedReadings { get; private init; }

    /// <summary>Usable seconds of A, and all of them.</summary>
    public (long Usable, long All) SecondsA { get; private init; }

    /// <summary>The same of B.</summary>
    public (long Usable, long All) SecondsB { get; private init; }

    /// <summary>By what A was judged; null where not told.</summary>
    public string? JudgedByA { get; private init; }

    /// <summary>By what B was judged; null where not told.</summary>
    public string? JudgedByB { get; private init; }

    // Two nights of one file name are told apart by what the archive calls them.
    private string? SessionName { get; init; }

    /// <summary>By how many levels the advice rose; negative where it fell.</summary>
    public int AdviceRise => RankOf(AdviceB) - RankOf(AdviceA);

    /// <summary>Compares the results of two runs over the same recording.</summary>
    /// <param name="a">The first run; null where it has no such recording.</param>
    /// <param name="b">The second run; null where it has no such recording.</param>
    /// <param name="options">What counts as the same.</param>
    /// <exception cref="ArgumentException">Both are null.</exception>
    public static RecordingComparison Of(RecordingResults? a, RecordingResults? b, ComparisonOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        var (first, second) = (a ?? Nothing(b), b ?? Nothing(a));
        var areBothThere = a is { Problem: null } && b is { Problem: null };
        var pairs = ReadingPairs.Of(first.Readings, second.Readings, options.WithinSeconds);
        var (from, to) = pairs.Append(default).MaxBy(pair => Math.Abs(pair.B.Spo2Percent - pair.A.Spo2Percent));
        var largest = Math.Abs(to.Spo2Percent - from.Spo2Percent);
        var (onlyA, onlyB) = (first.Readings.Count - pairs.Count, second.Readings.Count - pairs.Count);
        return new RecordingComparison(
            first.Name,
            VerdictOf(first, second, !areBothThere || largest > 0 || onlyA > 0 || onlyB > 0, options.AlarmFrom),
            onlyA,
            onlyB,
            areBothThere ? largest : null,
            largest > 0 ? from : null,
            largest > 0 ? to : null,
            first.UsedShare,
            second.UsedShare,
            first.HighestLevel,
            second.HighestLevel,
            ProblemOf(a, b))
        {
            IsUnreadable = a?.Problem is not null || b?.Problem is not null,
            Both = [.. pairs.Select(pair => (pair.A.Spo2Percent, pair.B.Spo2Percent))],
            MovedReadings = pairs.Count(pair => pair.A.Spo2Percent != pair.B.Spo2Percent),
            SecondsA = (first.UsableSeconds, first.Seconds),
            SecondsB = (second.UsableSeconds, second.Seconds),
            SessionName = (a?.Session ?? b?.Session) is { } session ? RecordingName.Of(session) : null,
            JudgedByA = a?.JudgedBy,
            JudgedByB = b?.JudgedBy,
        };
    }

    /// <summary>The row named by its session, where it has one.</summary>
    internal RecordingComparison NamedBySession() => SessionName is { } name ? this with { Recording = name } : this;

    /// <summary>The row without its readings.</summary>
    /// <param name="texts">Texts that rows share.</param>
    internal RecordingComparison Compact(HashSet<string> texts) => this with { Both = [], JudgedByA = Shared(texts, JudgedByA), JudgedByB = Shared(texts, JudgedByB) };

    private static string? Shared(HashSet<string> texts, string? text)
    {
        if (text is not null && texts.TryGetValue(text, out var known))
        {
            return known;
        }

        if (text is not null)
        {
            texts.Add(text);
        }

        return text;
    }

    private static Verdict VerdictOf(RecordingResults a, RecordingResults b, bool isMoved, AdviceLevel alarmFrom) =>
        Alarms.IsAnyMissing(a, b, alarmFrom) ? Verdict.Lost
        : Alarms.IsAnyMissing(b, a, alarmFrom) ? Verdict.Gained
        : isMoved ? Verdict.Moved
        : Verdict.Same;

    private static string? ProblemOf(RecordingResults? a, RecordingResults? b) =>
        a?.Problem ?? b?.Problem ?? (a is null ? "A has no such recording." : b is null ? "B has no such recording." : null);

    private static RecordingResults Nothing(RecordingResults? other) =>
        other is null ? throw new ArgumentException("One run has to know the recording.", nameof(other)) : new RecordingResults(other.Source);

    private static int RankOf(AdviceLevel? level) => level is { } known ? (int)known : -1;
}
