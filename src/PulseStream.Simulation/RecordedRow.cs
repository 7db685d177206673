using PulseStream.Samples;

namespace PulseStream.Simulation;

/// <summary>One row of a recording as it stands in a file.</summary>
/// <param name="Counter">Sample counter, wrapped at the scenario's width; repeated rows repeat it, missing ones are missing.</param>
/// <param name="Seconds">Since the recording's start by the stated rate.</param>
/// <param name="Sample">The counts.</param>
public readonly record struct RecordedRow(long Counter, double Seconds, Sample Sample);
