namespace PulseStream.Page;

/// <summary>What the page shows beside the session's own events.</summary>
/// <param name="Person">Pseudonym under which the session is kept; null where none is told.</param>
/// <param name="Archive">Where past sessions lie; null where none are kept.</param>
/// <param name="Speed">How many times as fast as life a recording is played; 1 for an instrument.</param>
public sealed record BedsideOptions(string? Person, string? Archive, double Speed);
