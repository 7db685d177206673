namespace PulseStream.Simulation.Light;

/// <summary>What an episode may know of the moment it acts in.</summary>
/// <param name="Seconds">When both lights are measured.</param>
/// <param name="DarkSeconds">When the dark is measured, a little later.</param>
/// <param name="DurationSeconds">Of the whole recording.</param>
/// <param name="PulseAbsorbance">Infrared absorbance of the arterial pulse from trough to top.</param>
/// <param name="BeatPhase">0 to 1 from onset to onset.</param>
internal readonly record struct Instant(
    double Seconds,
    double DarkSeconds,
    double DurationSeconds,
    double PulseAbsorbance,
    double BeatPhase);
