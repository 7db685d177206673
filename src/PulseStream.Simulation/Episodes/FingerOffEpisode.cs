using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>Nothing is in the clip.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Level">
/// Light that reaches the detector, over that through the finger: near 0 where the sensor looks at light thrown back, 1.5 and more
/// where the emitter shines across an open clip.
/// </param>
public sealed record FingerOffEpisode(double FromSeconds, double ToSeconds, double Level = 0.03) : Episode(FromSeconds, ToSeconds)
{
    private const double EdgeSeconds = 0.3;

    /// <inheritdoc/>
    public override FingerPlacement Placement => FingerPlacement.Off;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path) =>
        path.Replace(Presence(now.Seconds, EdgeSeconds), Level, Level);
}
