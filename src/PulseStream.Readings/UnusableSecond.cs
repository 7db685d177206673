namespace PulseStream.Readings;

/// <summary>A second that is refused: it has no saturation and no pulse to show by accident.</summary>
/// <param name="SecondIndex">Whole seconds since the recording's start.</param>
/// <param name="Reasons">At least one.</param>
/// <param name="PerfusionPercent">Infrared, peak to trough of a beat over the mean, percent; null where it is not known.</param>
public readonly record struct UnusableSecond(long SecondIndex, Reasons Reasons, double? PerfusionPercent);
