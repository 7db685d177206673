using PulseStream.Readings;

namespace PulseStream.Archive;

/// <summary>What listings, courses and comparisons need of a session.</summary>
/// <param name="Readings">Accepted readings in order.</param>
/// <param name="Sittings">Sittings in order.</param>
/// <param name="Advice">Advice in order.</param>
public sealed record SessionOutline(IReadOnlyList<Reading> Readings, IReadOnlyList<Sitting> Sittings, IReadOnlyList<OutlinedAdvice> Advice);
