namespace PulseStream.Triage.Policies;

/// <summary>What a second value in a band means when it comes within a window of minutes after an earlier one.</summary>
/// <param name="FromMinutes">Shortest time between the two, minutes, itself within the window.</param>
/// <param name="ToMinutes">Longest time between the two, minutes, itself within the window.</param>
/// <param name="Level">The level that it raises to.</param>
public sealed record SecondValueRule(int FromMinutes, int ToMinutes, AdviceLevel Level);
