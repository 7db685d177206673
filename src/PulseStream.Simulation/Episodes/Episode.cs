using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>Something that happens for a while.</summary>
/// <param name="FromSeconds">Start, in seconds since the recording's start; −∞ and +∞ together mean all of it.</param>
/// <param name="ToSeconds">End, later than the start.</param>
public abstract record Episode(double FromSeconds, double ToSeconds)
{
    /// <summary>Where the finger is meanwhile; <see cref="FingerPlacement.On"/> where the episode does not touch it.</summary>
    public virtual FingerPlacement Placement => FingerPlacement.On;

    /// <summary>What the episode disturbs.</summary>
    public virtual Disturbances Disturbance => Disturbances.None;

    /// <summary>True where the episode touches any instant of [from, to).</summary>
    /// <param name="fromSeconds">Start of the stretch.</param>
    /// <param name="toSeconds">End of the stretch.</param>
    public bool Overlaps(double fromSeconds, double toSeconds) => FromSeconds < toSeconds && ToSeconds > fromSeconds;

    internal abstract void Act(in Instant now, ulong seed, ref OpticalPath path);

    /// <summary>0 at both ends of the episode, 1 between, without a corner: half a cosine wave at each edge.</summary>
    private protected double Presence(double seconds, double edgeSeconds)
    {
        var fromEdge = Math.Min(seconds - FromSeconds, ToSeconds - seconds);
        return fromEdge >= edgeSeconds ? 1 : 0.5 - (0.5 * Math.Cos(Math.PI * Math.Max(0, fromEdge) / edgeSeconds));
    }
}
