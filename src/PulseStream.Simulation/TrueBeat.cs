namespace PulseStream.Simulation;

/// <summary>One beat as it truly was.</summary>
/// <param name="Seconds">Time of the steepest rise of blood volume, in seconds since the recording's start.</param>
/// <param name="IntervalSeconds">Since the steepest rise before, which may lie before the recording or behind a finger that was off.</param>
public readonly record struct TrueBeat(double Seconds, double IntervalSeconds);
