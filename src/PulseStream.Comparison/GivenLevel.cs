using PulseStream.Triage;

namespace PulseStream.Comparison;

/// <summary>An advice as results tell it.</summary>
/// <param name="Second">The second that it follows.</param>
/// <param name="Level">How urgent it is.</param>
public readonly record struct GivenLevel(long Second, AdviceLevel Level);
