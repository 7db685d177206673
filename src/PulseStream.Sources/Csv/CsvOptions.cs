using PulseStream.Sources.Signals;

namespace PulseStream.Sources.Csv;

/// <summary>What a person may say about a recording in CSV.</summary>
/// <param name="RateHz">Sample rate in Hz, 25 to 1000, used where the file does not tell it; null where it is not known.</param>
/// <param name="FullScaleCounts">The converter's largest count; null where clipping is judged from the data.</param>
/// <param name="Start">The instant of the first sample with its local offset; null where it is not known.</param>
/// <param name="Say">
/// Receives diagnostics, one line each without a line end: columns ignored, the first bad row of each cause with its line
/// and, at the end, how many there were of each cause. Null drops them.
/// </param>
public sealed record CsvOptions(
    double? RateHz = null,
    double? FullScaleCounts = null,
    DateTimeOffset? Start = null,
    Action<string>? Say = null)
{
    /// <summary>Which columns carry what; a column that it does not name keeps its own meaning.</summary>
    public SignalMap Map { get; init; } = SignalMap.Empty;
}
