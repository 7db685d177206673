namespace PulseStream.Archive;

/// <summary>An advice as the archive keeps it.</summary>
/// <param name="Second">The second of the recording that it was given at.</param>
/// <param name="Level">Name of its level.</param>
/// <param name="Text">What the person was told.</param>
/// <param name="RecheckAfterMinutes">Minutes until the next check; null where none was asked for.</param>
/// <param name="Because">The rules that spoke, as one text.</param>
public sealed record ArchivedAdvice(long Second, string Level, string Text, int? RecheckAfterMinutes, string Because);
