namespace PulseStream.Triage;

/// <summary>What is known of the person and the device beside the numbers; it holds for a whole session.</summary>
public sealed record Circumstances
{
    /// <summary>How the person feels; not asked unless told.</summary>
    public Feeling Feeling { get; init; }

    /// <summary>The range that a clinician set for this person; null where none is.</summary>
    public TargetRange? Target { get; init; }

    /// <summary>Whether the person is given oxygen.</summary>
    public bool OnOxygen { get; init; }

    /// <summary>The device's stated accuracy A_rms, SpO2 percentage points, 0 or more; null where none is stated.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Negative or not finite.</exception>
    public double? DeviceArmsPercent
    {
        get;
        init => field = value is { } arms ? Limits.NotNegative(arms, nameof(DeviceArmsPercent)) : null;
    }
}
