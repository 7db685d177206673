using PulseStream.Signal;

namespace PulseStream.Sessions.Events;

/// <summary>A beat was found.</summary>
/// <param name="Beat">The beat.</param>
/// <param name="Seconds">Time of its steepest rise since the recording's start, in seconds.</param>
public sealed record BeatFound(Beat Beat, double Seconds) : SessionEvent;
