namespace PulseStream.Cli.Inputs;

/// <summary>A check that an advice asked for.</summary>
/// <param name="Asked">When the advice was given.</param>
/// <param name="Due">When the check was due.</param>
/// <param name="Done">When the next reading was accepted; null where none was.</param>
internal sealed record PlannedCheck(DateTimeOffset Asked, DateTimeOffset Due, DateTimeOffset? Done);
