using PulseStream.Readings;

namespace PulseStream.Triage;

/// <summary>
/// What is judged: one saturation, one pulse, or neither, with what is known of the person. Without a saturation the
/// advice speaks of the pulse alone; without both it asks to try again. Symptoms count in every case.
/// </summary>
public sealed record Findings
{
    /// <summary>SpO2 with its 95 % interval, percent; where no interval is known, both ends equal the value. Null where there is none.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value or an end lies outside 0 to 100 or is not a number.</exception>
    public Saturation? Spo2
    {
        get;
        init => field = value is { } spo2 ? Checked(spo2.OrPoint()) : null;
    }

    /// <summary>Beats a minute, 0 or more; null where it is not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double? PulseRatePerMinute
    {
        get;
        init => field = value is { } pulse ? Limits.NotNegative(pulse, nameof(PulseRatePerMinute)) : null;
    }

    /// <summary>The person and the device.</summary>
    public Circumstances Circumstances { get; init; } = new();

    /// <summary>Earlier accepted readings of the same person, in any order.</summary>
    public IReadOnlyList<EarlierReading> Earlier { get; init; } = [];

    /// <summary>Whether the readings of the sitting disagree or it was too short, so that a repeat is asked for now.</summary>
    public bool IsUnsettled { get; init; }

    /// <summary>The lowest SpO2 accepted in the same sitting, percent, where it is not the one judged: it is never hidden.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100.</exception>
    public double? LowestSpo2Percent
    {
        get;
        init => field = value is { } lowest ? Limits.Percent(lowest, nameof(LowestSpo2Percent)) : null;
    }

    /// <summary>
    /// The SpO2 that the same sitting went on to, percent, where these findings were so urgent that it does not take
    /// their advice back; null otherwise.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">Outside 0 to 100.</exception>
    public double? LaterSpo2Percent
    {
        get;
        init => field = value is { } later ? Limits.Percent(later, nameof(LaterSpo2Percent)) : null;
    }

    private static Saturation Checked(Saturation spo2) => new(
        Limits.Percent(spo2.Percent, nameof(Spo2)),
        Limits.Percent(spo2.LowPercent, nameof(Spo2)),
        Limits.Percent(spo2.HighPercent, nameof(Spo2)));
}
