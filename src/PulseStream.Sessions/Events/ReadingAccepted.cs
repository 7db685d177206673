using PulseStream.Readings;

namespace PulseStream.Sessions.Events;

/// <summary>A reading was accepted at the second told just before.</summary>
/// <param name="Reading">The reading.</param>
public sealed record ReadingAccepted(Reading Reading) : SessionEvent;
