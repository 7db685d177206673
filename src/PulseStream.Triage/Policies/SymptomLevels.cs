namespace PulseStream.Triage.Policies;

/// <summary>Levels that symptoms raise to, whatever the numbers say.</summary>
/// <param name="Breathless">Hard to breathe at rest.</param>
/// <param name="Severe">Gravely ill, confused, blue, chest pain, or cannot be woken.</param>
public sealed record SymptomLevels(AdviceLevel Breathless, AdviceLevel Severe);
