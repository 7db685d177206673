using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>Steady light from outside reaches the detector.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Percent">Of the infrared light through the finger.</param>
public sealed record AmbientEpisode(double FromSeconds, double ToSeconds, double Percent = 10) : Episode(FromSeconds, ToSeconds)
{
    // A lamp is switched, a door opened: at once, to the eye.
    private const double EdgeSeconds = 0.05;

    /// <inheritdoc/>
    public override Disturbances Disturbance => Disturbances.Ambient;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        path.Ambient += Percent / 100 * Presence(now.Seconds, EdgeSeconds);
        path.AmbientInTheDark += Percent / 100 * Presence(now.DarkSeconds, EdgeSeconds);
    }
}
