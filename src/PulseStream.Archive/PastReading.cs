using PulseStream.Readings;

namespace PulseStream.Archive;

/// <summary>An accepted reading of an earlier session.</summary>
/// <param name="Time">The instant of the second at which it was accepted.</param>
/// <param name="Session">Name of its session.</param>
/// <param name="Reading">The reading.</param>
public sealed record PastReading(DateTimeOffset Time, string Session, Reading Reading);
