using PulseStream.Readings;

namespace PulseStream.Sessions.Events;

/// <summary>A second is complete.</summary>
/// <param name="Second">What is said of it.</param>
/// <param name="SteadySeconds">Seconds for which the same whole percent has been held, this one among them; a reading is accepted once there are enough.</param>
public sealed record SecondJudged(Second Second, int SteadySeconds) : SessionEvent;
