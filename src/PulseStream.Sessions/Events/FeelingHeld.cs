using PulseStream.Triage;

namespace PulseStream.Sessions.Events;

/// <summary>From here on the session is judged by another feeling: somebody answered, or an answer to an earlier sitting has lapsed.</summary>
/// <param name="Feeling">How the person feels.</param>
public sealed record FeelingHeld(Feeling Feeling) : SessionEvent;
