namespace PulseStream.Triage.Policies;

/// <summary>What a personal target range means; it replaces the bands.</summary>
/// <param name="Inside">Level inside the range, ends included.</param>
/// <param name="Below">Level below it.</param>
/// <param name="FarBelow">Level <paramref name="FarBelowPoints"/> or more below it.</param>
/// <param name="FarBelowPoints">SpO2 percentage points below the low end.</param>
/// <param name="Above">Level above it without oxygen.</param>
/// <param name="AboveOnOxygen">Level above it on oxygen.</param>
/// <param name="EmergencyBelowPercent">Under it, percent, it is an emergency, even inside the range.</param>
public sealed record TargetLevels(
    AdviceLevel Inside,
    AdviceLevel Below,
    AdviceLevel FarBelow,
    double FarBelowPoints,
    AdviceLevel Above,
    AdviceLevel AboveOnOxygen,
    double EmergencyBelowPercent);
