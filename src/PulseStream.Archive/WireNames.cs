using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Archive;

/// <summary>Every name that a session's files show to other programs, in one place.</summary>
internal static class WireNames
{
    public const string SamplesFile = "samples.parquet";
    public const string SessionFile = "session.json";
    public const string JournalFile = "journal.db";
    public const string UnfinishedSuffix = ".part";
    public const string ParquetSuffix = ".parquet";

    public const string PersonKey = "person=";
    public const string DateKey = "date=";
    public const string SessionKey = "session=";
    public const string NoPerson = "unassigned";
    public const string NoDate = "undated";

    public const string Sample = "sample";
    public const string TimeUtc = "time_utc";
    public const string Version = "version";
    public const string CurveHash = "curveHash";

    /// <summary>The columns of samples in the order of <see cref="Samples.Sample"/>'s members.</summary>
    public static readonly IReadOnlyList<(string Name, SampleColumns Column)> Channels =
    [
        ("red", SampleColumns.Red),
        ("infrared", SampleColumns.Infrared),
        ("ambient", SampleColumns.Ambient),
        ("pleth", SampleColumns.Pleth),
        ("accel_x", SampleColumns.Acceleration),
        ("accel_y", SampleColumns.Acceleration),
        ("accel_z", SampleColumns.Acceleration),
    ];

    private static readonly IReadOnlyList<(string Name, Reasons Reason)> ReasonNames =
    [
        ("settling", Reasons.Settling),
        ("no-finger", Reasons.NoFinger),
        ("saturated", Reasons.Saturated),
        ("ambient-light", Reasons.AmbientLight),
        ("motion", Reasons.Motion),
        ("misplaced", Reasons.Misplaced),
        ("low-perfusion", Reasons.LowPerfusion),
        ("no-pulse", Reasons.NoPulse),
        ("missing-samples", Reasons.MissingSamples),
        ("out-of-range", Reasons.OutOfRange),
        ("irregular", Reasons.Irregular),
    ];

    private static readonly IReadOnlyList<(string Name, SittingOutcome Outcome)> OutcomeNames =
    [
        ("none", SittingOutcome.None),
        ("accepted", SittingOutcome.Accepted),
        ("unsettled", SittingOutcome.Unsettled),
    ];

    /// <summary>Reasons as one text, separated by blanks; empty where there are none. SQL splits it where it wants to.</summary>
    /// <param name="reasons">Any.</param>
    public static string Of(Reasons reasons) =>
        string.Join(' ', ReasonNames.Where(r => reasons.HasFlag(r.Reason)).Select(r => r.Name));

    /// <summary>The reasons of a text that <see cref="Of(Reasons)"/> made.</summary>
    /// <param name="text">Names separated by blanks.</param>
    public static Reasons ReasonsOf(string text)
    {
        var names = text.Split(' ');
        return ReasonNames.Where(r => names.Contains(r.Name, StringComparer.Ordinal)).Aggregate(Reasons.None, (all, r) => all | r.Reason);
    }

    /// <summary>Name of an outcome.</summary>
    /// <param name="outcome">Any.</param>
    public static string Of(SittingOutcome outcome) => OutcomeNames.Single(o => o.Outcome == outcome).Name;

    /// <summary>The outcome of a name; <see cref="SittingOutcome.None"/> where the name is unknown.</summary>
    /// <param name="name">The name.</param>
    public static SittingOutcome OutcomeOf(string name) =>
        OutcomeNames.FirstOrDefault(o => string.Equals(o.Name, name, StringComparison.Ordinal)).Outcome;

    /// <summary>Names of the columns that a recording has, `sample` not among them.</summary>
    /// <param name="columns">What the recording has.</param>
    public static IReadOnlyList<string> Of(SampleColumns columns) =>
        [.. Channels.Where(c => columns.HasFlag(c.Column)).Select(c => c.Name)];

    /// <summary>What a recording has, from the names of its columns.</summary>
    /// <param name="names">As <see cref="Of(SampleColumns)"/> gives them.</param>
    public static SampleColumns ColumnsOf(IEnumerable<string> names) =>
        Channels.Where(c => names.Contains(c.Name, StringComparer.Ordinal)).Aggregate(SampleColumns.None, (all, c) => all | c.Column);
}
