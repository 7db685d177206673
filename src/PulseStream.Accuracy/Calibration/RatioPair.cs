namespace PulseStream.Accuracy.Calibration;

/// <summary>A ratio of ratios beside the reference's saturation of the same moment.</summary>
/// <param name="Subject">Pseudonym of the person.</param>
/// <param name="Reference">Saturation in percent.</param>
/// <param name="Ratio">Ratio of ratios R, no unit.</param>
public sealed record RatioPair(string Subject, double Reference, double Ratio);
