namespace PulseStream.Readings;

/// <summary>A second that can be believed.</summary>
/// <param name="SecondIndex">Whole seconds since the recording's start.</param>
/// <param name="Spo2">Saturation with its interval; null where the recording has no red light.</param>
/// <param name="PulseRatePerMinute">Beats a minute: mean rate of the beats of the eight seconds that end with this one; null where the rhythm is so irregular that it would depend on how one counts.</param>
/// <param name="PerfusionPercent">Infrared, peak to trough of a beat over the mean, percent; null for a ready-made plethysmogram.</param>
/// <param name="Warnings">What to keep in mind: <see cref="Reasons.LowPerfusion"/>, <see cref="Reasons.Irregular"/> or none.</param>
public readonly record struct UsableSecond(
    long SecondIndex,
    Saturation? Spo2,
    double? PulseRatePerMinute,
    double? PerfusionPercent,
    Reasons Warnings);
