namespace PulseStream.Signal;

/// <summary>What separating the pulse from one movement gave.</summary>
/// <param name="Ratio">Ratio of ratios R of the pulse.</param>
/// <param name="StandardError">Its standard error from what the separation left over and from how well the pulse's height is known.</param>
/// <param name="MotionRatio">Red over infrared of the movement.</param>
/// <param name="Agreement">Correlation of the separated pulse with the calm one laid out along its beats.</param>
internal readonly record struct SeparatedPulse(double Ratio, double StandardError, double MotionRatio, double Agreement);
