using PulseStream.Samples;

namespace PulseStream.Sessions.Events;

/// <summary>The first event.</summary>
/// <param name="Header">What is known of the recording before its first sample.</param>
/// <param name="CurveName">The calibration curve in use.</param>
/// <param name="PolicyName">The triage policy in use.</param>
public sealed record SessionStarted(RecordingHeader Header, string CurveName, string PolicyName) : SessionEvent;
