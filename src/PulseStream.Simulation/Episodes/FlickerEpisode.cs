using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>Lamplight that flickers. Samples are points in time, so a flicker above half the rate folds by itself.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Hz">Frequency of the light, twice that of the mains behind it.</param>
/// <param name="Percent">Peak to trough, of the infrared light through the finger.</param>
public sealed record FlickerEpisode(
    double FromSeconds,
    double ToSeconds,
    double Hz = 101.3,
    double Percent = 1) : Episode(FromSeconds, ToSeconds)
{
    private const double EdgeSeconds = 0.3;

    /// <inheritdoc/>
    public override Disturbances Disturbance => Disturbances.Flicker;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        path.Ambient += LightAt(now.Seconds);
        path.AmbientInTheDark += LightAt(now.DarkSeconds);
    }

    private double LightAt(double seconds) =>
        Percent / 100 / 2 * Presence(seconds, EdgeSeconds) * (1 + Math.Sin(Math.Tau * Hz * seconds));
}
