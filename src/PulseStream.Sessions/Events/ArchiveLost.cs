namespace PulseStream.Sessions.Events;

/// <summary>The archive of a live session can no longer be written: reading goes on, and nothing from here on is kept.</summary>
/// <param name="Problem">What is wrong and what to do, one sentence. What was secured before waits in the journal.</param>
public sealed record ArchiveLost(string Problem) : SessionEvent;
