using PulseStream.Readings;

namespace PulseStream.Cli.Inputs;

/// <summary>A reading at its instant.</summary>
/// <param name="Time">When it was accepted, with the local offset.</param>
/// <param name="Reading">The reading.</param>
/// <param name="Sensor">Which sensor; null where not told.</param>
internal sealed record TimedReading(DateTimeOffset Time, Reading Reading, string? Sensor);
