namespace PulseStream.Sources;

/// <summary>Something to be said of an instant of a recording, beside its samples.</summary>
/// <param name="Index">The sample.</param>
/// <param name="Text">What is said; null for a beat.</param>
public readonly record struct RecordingNote(long Index, string? Text);
