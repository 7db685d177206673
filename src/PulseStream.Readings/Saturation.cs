namespace PulseStream.Readings;

/// <summary>An SpO2 with its interval, in percent.</summary>
/// <param name="Percent">The estimate, unrounded, 0 to 100.</param>
/// <param name="LowPercent">Lower end of the 95 % interval, 0 to 100: the value that the curve gives for the same blood in noise-free light lies between the ends 95 times in 100.</param>
/// <param name="HighPercent">Upper end of the 95 % interval, 0 to 100.</param>
public readonly record struct Saturation(double Percent, double LowPercent, double HighPercent);
