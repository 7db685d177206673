using PulseStream.Triage;

namespace PulseStream.Comparison;

/// <summary>What one run found in one recording.</summary>
/// <param name="Source">The recording as it was named: a file or a session, with or without its folder.</param>
public sealed record RecordingResults(string Source)
{
    /// <summary>Person, date and session in an archive; null where the results come from a file.</summary>
    public string? Session { get; init; }

    /// <summary>Accepted readings in order.</summary>
    public IReadOnlyList<AcceptedValue> Readings { get; init; } = [];

    /// <summary>Advice in order.</summary>
    public IReadOnlyList<GivenLevel> Advice { get; init; } = [];

    /// <summary>Sittings in order.</summary>
    public IReadOnlyList<FingerSpan> Sittings { get; init; } = [];

    /// <summary>Seconds judged.</summary>
    public long Seconds { get; init; }

    /// <summary>Those of them that were usable.</summary>
    public long UsableSeconds { get; init; }

    /// <summary>By what it was judged: curve, policy, version; null where not told.</summary>
    public string? JudgedBy { get; init; }

    /// <summary>Why its results cannot be read, as a sentence; null where they can.</summary>
    public string? Problem { get; init; }

    /// <summary>Name of the file or the session without its folder.</summary>
    public string Name => RecordingName.Of(Source);

    /// <summary>Share of the seconds that were usable, 0 to 1; null where there is no second.</summary>
    public double? UsedShare => Seconds > 0 ? (double)UsableSeconds / Seconds : null;

    /// <summary>The most urgent advice; null where none was given.</summary>
    public AdviceLevel? HighestLevel => Advice.Count > 0 ? Advice.Max(given => given.Level) : null;
}
