namespace PulseStream.Readings;

/// <summary>A reading that was accepted: five consecutive usable seconds of the same whole percent.</summary>
/// <param name="SecondIndex">The second at which it was accepted.</param>
/// <param name="WholeSpo2Percent">The whole percent that was held.</param>
/// <param name="Spo2">The unrounded saturation over the held seconds with its interval; bands of a policy are judged on it.</param>
/// <param name="PulseRatePerMinute">Median of the held seconds, whole beats a minute; null where fewer than half of them tell one.</param>
/// <param name="PerfusionPercent">Infrared, peak to trough of a beat over the mean, percent.</param>
/// <param name="HeldSeconds">How long the value had been held, 5 or more.</param>
/// <param name="Warnings">What the held seconds warned of.</param>
public sealed record Reading(
    long SecondIndex,
    int WholeSpo2Percent,
    Saturation Spo2,
    int? PulseRatePerMinute,
    double? PerfusionPercent,
    int HeldSeconds,
    Reasons Warnings);
