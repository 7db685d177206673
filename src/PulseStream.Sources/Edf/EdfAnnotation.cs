namespace PulseStream.Sources.Edf;

/// <summary>An annotation of EDF+.</summary>
/// <param name="OnsetSeconds">Seconds since the file's start.</param>
/// <param name="DurationSeconds">Null where not told.</param>
/// <param name="Texts">What is said of that time; empty where only time is kept.</param>
internal sealed record EdfAnnotation(double OnsetSeconds, double? DurationSeconds, IReadOnlyList<string> Texts);
