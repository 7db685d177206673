using PulseStream.Samples;

namespace PulseStream.Sessions.Events;

/// <summary>The first event.</summary>
/// <param name="Header">What is known of the recording before its first sample.</param>
/// <param name="Judgement">By what it is judged.</param>
public sealed record SessionStarted(RecordingHeader Header, Judgement Judgement) : SessionEvent;
