namespace PulseStream.Signal;

/// <summary>What a movement may add by chance to either light's share of a laid-out pulse.</summary>
/// <param name="Infrared">Variance of infrared's share.</param>
/// <param name="Slope">What red's share has more for each that infrared's has.</param>
/// <param name="OwnRed">Variance of red's share beside that.</param>
internal readonly record struct MovementVariance(double Infrared, double Slope, double OwnRed);
