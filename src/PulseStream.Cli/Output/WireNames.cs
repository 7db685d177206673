using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Cli.Output;

/// <summary>Every name that results carry, in one place.</summary>
internal static class WireNames
{
    public const string Kind = "kind";
    public const string Session = "session";
    public const string Second = "second";
    public const string Beat = "beat";
    public const string Reading = "reading";
    public const string Sitting = "sitting";
    public const string Advice = "advice";
    public const string End = "end";

    public const string Source = "source";
    public const string SampleRateHz = "sampleRateHz";
    public const string Columns = "columns";
    public const string Curve = "curve";
    public const string Policy = "policy";
    public const string Version = "version";
    public const string CurveHash = "curveHash";
    public const string PolicyHash = "policyHash";

    public const string Usable = "usable";
    public const string Spo2 = "spo2";
    public const string Spo2Low = "spo2Low";
    public const string Spo2High = "spo2High";
    public const string Pulse = "pulse";
    public const string Perfusion = "perfusion";
    public const string ReasonList = "reasons";

    public const string Time = "time";
    public const string Interval = "interval";
    public const string Ratio = "ratio";
    public const string Quality = "quality";

    public const string HeldSeconds = "heldSeconds";
    public const string From = "from";
    public const string To = "to";
    public const string Outcome = "outcome";
    public const string ReadingCount = "readings";

    public const string Level = "level";
    public const string Text = "text";
    public const string RecheckAfterMinutes = "recheckAfterMinutes";
    public const string Because = "because";

    public const string Samples = "samples";
    public const string Missing = "missing";
    public const string RefusedRows = "refusedRows";
    public const string Seconds = "seconds";
    public const string UsableSeconds = "usableSeconds";

    private static readonly (Reasons Reason, string Name)[] ReasonNames =
    [
        (Reasons.Settling, "settling"),
        (Reasons.NoFinger, "no-finger"),
        (Reasons.Saturated, "saturated"),
        (Reasons.AmbientLight, "ambient-light"),
        (Reasons.Motion, "motion"),
        (Reasons.Misplaced, "misplaced"),
        (Reasons.LowPerfusion, "low-perfusion"),
        (Reasons.NoPulse, "no-pulse"),
        (Reasons.MissingSamples, "missing-samples"),
        (Reasons.OutOfRange, "out-of-range"),
        (Reasons.Irregular, "irregular"),
    ];

    private static readonly (SampleColumns Column, string[] Names)[] ColumnNames =
    [
        (SampleColumns.Red, ["red"]),
        (SampleColumns.Infrared, ["infrared"]),
        (SampleColumns.Ambient, ["ambient"]),
        (SampleColumns.Pleth, ["pleth"]),
        (SampleColumns.Acceleration, ["accel_x", "accel_y", "accel_z"]),
    ];

    public static IEnumerable<string> Of(Reasons reasons) =>
        ReasonNames.Where(named => reasons.HasFlag(named.Reason)).Select(named => named.Name);

    public static IEnumerable<string> Of(SampleColumns columns) =>
        ColumnNames.Where(named => columns.HasFlag(named.Column)).SelectMany(named => named.Names);

    public static string Of(SittingOutcome outcome) => outcome switch
    {
        SittingOutcome.None => "none",
        SittingOutcome.Accepted => "accepted",
        SittingOutcome.Unsettled => "unsettled",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome), outcome, "No outcome has no name."),
    };
}
