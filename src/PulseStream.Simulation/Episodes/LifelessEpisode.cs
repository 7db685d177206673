using PulseStream.Simulation.Chance;
using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>Something without blood is in the clip: a glove, a pencil, a folded cloth.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Level">Infrared light through it, over that through the finger.</param>
/// <param name="RedLevel">Red light through it, over that through the finger.</param>
/// <param name="StirPercent">How much it stirs, deviation in percent of the light: a slow random course, the same in both channels.</param>
public sealed record LifelessEpisode(
    double FromSeconds,
    double ToSeconds,
    double Level = 0.8,
    double RedLevel = 1.1,
    double StirPercent = 0.02) : Episode(FromSeconds, ToSeconds)
{
    private const double EdgeSeconds = 0.3;
    private const double StirKnotSeconds = 1.5;

    /// <inheritdoc/>
    public override FingerPlacement Placement => FingerPlacement.Lifeless;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        var stir = 1 + (StirPercent / 100 * new SmoothNoise(new SplitMix(seed, 0), StirKnotSeconds).At(now.Seconds));
        path.Replace(Presence(now.Seconds, EdgeSeconds), Level * stir, RedLevel * stir);
    }
}
