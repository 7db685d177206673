using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>The finger covers only part of the sensor: light that met no blood reaches the detector beside the rest.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Leak">Infrared light that gets past, over that through the finger.</param>
/// <param name="RedLeak">Red light that gets past, over that through the finger; unlike <paramref name="Leak"/> it bends R.</param>
public sealed record HalfOffEpisode(
    double FromSeconds,
    double ToSeconds,
    double Leak = 0.6,
    double RedLeak = 1) : Episode(FromSeconds, ToSeconds)
{
    private const double EdgeSeconds = 0.8;

    /// <inheritdoc/>
    public override FingerPlacement Placement => FingerPlacement.HalfOff;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        var presence = Presence(now.Seconds, EdgeSeconds);
        path.InfraredLeak += presence * Leak;
        path.RedLeak += presence * RedLeak;
    }
}
