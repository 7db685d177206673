namespace PulseStream.Archive;

/// <summary>What a session's end line counts. What a session that was cut off no longer knows is null.</summary>
/// <param name="Samples">Samples kept.</param>
/// <param name="Missing">Samples that should have been there and were not; for a session cut off those that its indices leave out.</param>
/// <param name="RefusedRows">Rows or frames refused.</param>
/// <param name="Repeats">Rows dropped because their sample had been seen already.</param>
/// <param name="Seconds">Seconds judged.</param>
/// <param name="UsableSeconds">Those of them that were usable.</param>
/// <param name="Readings">Readings accepted.</param>
public sealed record SessionCounts(
    long Samples,
    long Missing,
    long? RefusedRows,
    long? Repeats,
    long Seconds,
    long UsableSeconds,
    long Readings);
