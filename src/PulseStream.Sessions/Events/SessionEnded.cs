using PulseStream.Samples;

namespace PulseStream.Sessions.Events;

/// <summary>The last event; whatever was to be archived is sealed.</summary>
/// <param name="Tally">What the source has counted.</param>
/// <param name="Seconds">Seconds judged.</param>
/// <param name="UsableSeconds">Those of them that were usable.</param>
/// <param name="Readings">Readings accepted.</param>
public sealed record SessionEnded(SampleTally Tally, long Seconds, long UsableSeconds, long Readings) : SessionEvent;
