using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>No sample arrives.</summary>
/// <param name="FromSeconds">Time of the first missing sample.</param>
/// <param name="ToSeconds">Time of the first sample that arrives again.</param>
public sealed record GapEpisode(double FromSeconds, double ToSeconds) : Episode(FromSeconds, ToSeconds)
{
    /// <inheritdoc/>
    public override Disturbances Disturbance => Disturbances.Missing;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        // Nothing happens to the light; the samples are left out afterwards.
    }
}
