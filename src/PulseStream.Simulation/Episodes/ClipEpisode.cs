using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>The emitters shine brighter than the converter can count.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Brightness">Of both emitters, over the ordinary one; from about 1.8 on infrared clips, from about 2.2 red too.</param>
public sealed record ClipEpisode(double FromSeconds, double ToSeconds, double Brightness = 2.5) : Episode(FromSeconds, ToSeconds)
{
    private const double EdgeSeconds = 0.2;

    /// <inheritdoc/>
    public override Disturbances Disturbance => Disturbances.TooBright;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path) =>
        path.Brightness *= 1 + ((Brightness - 1) * Presence(now.Seconds, EdgeSeconds));
}
