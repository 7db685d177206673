namespace PulseStream.Triage.Policies;

/// <summary>What a measurement without saturation and pulse means.</summary>
/// <param name="Level">The level.</param>
/// <param name="RecheckAfterMinutes">Minutes to the next check, 0 for at once; there exactly where the level is <see cref="AdviceLevel.Recheck"/>.</param>
public sealed record NoReadingRule(AdviceLevel Level, int? RecheckAfterMinutes);
