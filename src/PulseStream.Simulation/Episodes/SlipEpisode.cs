using PulseStream.Simulation.Chance;
using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>The finger slides out bit by bit, and is put back at the end.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End, when it is put back within a second.</param>
/// <param name="Leak">Infrared light that gets past at the worst, over that through the finger.</param>
/// <param name="RedLeak">Red light that gets past at the worst, over that through the finger.</param>
public sealed record SlipEpisode(
    double FromSeconds,
    double ToSeconds,
    double Leak = 1,
    double RedLeak = 1.3) : Episode(FromSeconds, ToSeconds)
{
    private const double BackSeconds = 1;

    // It slides by fits and starts.
    private const double Unevenness = 0.08;
    private const double UnevenKnotSeconds = 1;

    /// <inheritdoc/>
    public override FingerPlacement Placement => FingerPlacement.Slipping;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        var start = Math.Max(0, FromSeconds);
        var way = (now.Seconds - start) / (Math.Min(ToSeconds, now.DurationSeconds) - start);
        var uneven = 1 + (Unevenness * new SmoothNoise(new SplitMix(seed, 0), UnevenKnotSeconds).At(now.Seconds));
        var share = way * uneven * Presence(now.Seconds, BackSeconds);
        path.InfraredLeak += share * Leak;
        path.RedLeak += share * RedLeak;
        path.Finger *= 1 - (share / 2);
    }
}
