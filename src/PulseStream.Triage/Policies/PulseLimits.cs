namespace PulseStream.Triage.Policies;

/// <summary>Limits of the pulse, beats a minute; every end lies inside its range.</summary>
/// <param name="UsualFrom">Under it the pulse is said.</param>
/// <param name="UsualTo">Above it the pulse is said.</param>
/// <param name="LimitFrom">Under it the level rises.</param>
/// <param name="LimitTo">Above it the level rises.</param>
/// <param name="OutsideLimits">The level that it raises to.</param>
public sealed record PulseLimits(double UsualFrom, double UsualTo, double LimitFrom, double LimitTo, AdviceLevel OutsideLimits);
