using PulseStream.Triage;

namespace PulseStream.Sessions.Events;

/// <summary>What follows from the reading or the sitting told just before.</summary>
/// <param name="Advice">The advice.</param>
public sealed record AdviceGiven(Advice Advice) : SessionEvent;
