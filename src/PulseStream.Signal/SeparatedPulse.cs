namespace PulseStream.Signal;

/// <summary>What separating the pulse from a movement gave.</summary>
/// <param name="Ratio">Ratio of ratios R of the pulse.</param>
/// <param name="StandardError">Its standard error from the movement and from how well the pulse's height is known.</param>
/// <param name="Likelihood">Logarithm of how much likelier the window is by each of its beats.</param>
internal readonly record struct SeparatedPulse(double Ratio, double StandardError, double Likelihood);
