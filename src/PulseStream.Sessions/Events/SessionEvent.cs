namespace PulseStream.Sessions.Events;

/// <summary>Something that a session tells, in time order: the beats of a second, the second, its reading, advice; a sitting, advice; the end.</summary>
public abstract record SessionEvent;
