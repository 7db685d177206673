namespace PulseStream.Readings;

/// <summary>One spot check, from the second the finger came on until it left or the recording ended.</summary>
/// <param name="FromSecond">The first second with a finger.</param>
/// <param name="ToSecond">The second just past the last one with a finger: the finger was on for ToSecond − FromSecond seconds.</param>
/// <param name="Outcome">How it ended.</param>
/// <param name="RecordReading">The reading of record: the highest accepted once the finger had been on long enough (common practice); null unless <see cref="SittingOutcome.Accepted"/>.</param>
/// <param name="LowestReading">The lowest reading accepted; null where none was.</param>
/// <param name="MedianPulseRatePerMinute">Median pulse of a sitting that has no SpO2 (a recording without red), whole beats a minute; null otherwise or where none is known.</param>
/// <param name="ReadingCount">How many readings were accepted.</param>
/// <param name="Reasons">Every reason for which a second of the sitting was refused.</param>
public sealed record Sitting(
    long FromSecond,
    long ToSecond,
    SittingOutcome Outcome,
    Reading? RecordReading,
    Reading? LowestReading,
    int? MedianPulseRatePerMinute,
    int ReadingCount,
    Reasons Reasons);
