using PulseStream.Readings;

namespace PulseStream.Sessions.Events;

/// <summary>A second is complete.</summary>
/// <param name="Second">What is said of it.</param>
public sealed record SecondJudged(Second Second) : SessionEvent;
