namespace PulseStream.Archive;

/// <summary>An advice without its words.</summary>
/// <param name="Second">The second of the recording that it was given at.</param>
/// <param name="Level">Name of its level.</param>
/// <param name="RecheckAfterMinutes">Minutes until the next check; null where none was asked for.</param>
public readonly record struct OutlinedAdvice(long Second, string Level, int? RecheckAfterMinutes);
