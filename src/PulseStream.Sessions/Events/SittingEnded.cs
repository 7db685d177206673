using PulseStream.Readings;

namespace PulseStream.Sessions.Events;

/// <summary>The finger left, or the recording ended.</summary>
/// <param name="Sitting">How the sitting went.</param>
public sealed record SittingEnded(Sitting Sitting) : SessionEvent;
