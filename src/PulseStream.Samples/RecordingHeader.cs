namespace PulseStream.Samples;

/// <summary>What is known of a recording before its first sample.</summary>
/// <param name="Source">Name of the file, session or port, as it is shown to people.</param>
/// <param name="Rate">Sample rate.</param>
/// <param name="Columns">Which values its samples carry.</param>
/// <param name="FullScaleCounts">The converter's largest count, where told; null where clipping is judged from the data.</param>
/// <param name="Start">The instant of sample 0 with its local offset, where known.</param>
public sealed record RecordingHeader(
    string Source,
    SampleRate Rate,
    SampleColumns Columns,
    double? FullScaleCounts = null,
    DateTimeOffset? Start = null);
