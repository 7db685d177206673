namespace PulseStream.Signal;

/// <summary>What the two lights of a window have of a laid-out pulse, as multiples of its height in infrared, and what may be chance in that.</summary>
/// <param name="Infrared">Infrared's share.</param>
/// <param name="Red">Red's share.</param>
/// <param name="InfraredVariance">Variance of infrared's share.</param>
/// <param name="Slope">What red's share has more by chance for each that infrared's has.</param>
/// <param name="OwnRedVariance">Variance of red's share beside that.</param>
internal readonly record struct PulseShares(double Infrared, double Red, double InfraredVariance, double Slope, double OwnRedVariance);
