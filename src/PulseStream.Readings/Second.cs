namespace PulseStream.Readings;

/// <summary>What is said of the second [SecondIndex, SecondIndex + 1); no sample after it was used.</summary>
/// <param name="SecondIndex">Whole seconds since the recording's start.</param>
/// <param name="PerfusionPercent">Infrared, peak to trough of a beat over the mean, percent; null where it is not known.</param>
public abstract record Second(long SecondIndex, double? PerfusionPercent);
