namespace PulseStream.Triage;

/// <summary>A range of SpO2 that a clinician set for one person; both ends belong to it, on the unrounded value.</summary>
public sealed record TargetRange
{
    /// <summary>Makes a range.</summary>
    /// <param name="lowPercent">Low end, percent, 0 or more.</param>
    /// <param name="highPercent">High end, percent, above the low end, 100 or less.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end outside 0 to 100, or the high end not above the low one.</exception>
    public TargetRange(double lowPercent, double highPercent)
    {
        LowPercent = Limits.Percent(lowPercent, nameof(lowPercent));
        HighPercent = Limits.Percent(highPercent, nameof(highPercent));
        if (!(lowPercent < highPercent))
        {
            throw new ArgumentOutOfRangeException(nameof(highPercent), highPercent, $"A target range ends above its start, {lowPercent} %.");
        }
    }

    /// <summary>Low end, percent.</summary>
    public double LowPercent { get; }

    /// <summary>High end, percent.</summary>
    public double HighPercent { get; }
}
