namespace PulseStream.Accuracy.Calibration;

/// <summary>A point of a fit.</summary>
/// <param name="Ratio">Ratio of ratios.</param>
/// <param name="Reference">Saturation, percent.</param>
/// <param name="Weight">0 to 1.</param>
internal readonly record struct WeightedPoint(double Ratio, double Reference, double Weight);
