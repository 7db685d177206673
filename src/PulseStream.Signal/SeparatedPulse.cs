namespace PulseStream.Signal;

/// <summary>What separating the pulse from a movement gave.</summary>
/// <param name="Ratio">Ratio of ratios R of the pulse.</param>
/// <param name="StandardError">Its standard error from the movement and from how well the pulse's height is known.</param>
/// <param name="MixtureScale">What the mixture of the lights in which the beats were found has to be multiplied by for a pulse of the calm height.</param>
/// <param name="Agreement">Correlation of that mixture with the calm pulse laid out along its beats.</param>
internal readonly record struct SeparatedPulse(double Ratio, double StandardError, double MixtureScale, double Agreement);
