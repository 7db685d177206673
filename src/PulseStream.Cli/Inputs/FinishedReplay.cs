using PulseStream.Comparison;

namespace PulseStream.Cli.Inputs;

/// <summary>A recording that a replay has finished.</summary>
/// <param name="Path">The recording.</param>
/// <param name="Results">What was found in it.</param>
internal sealed record FinishedReplay(string Path, RecordingResults Results);
