using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>The finger moves: blood and tissue in the light's way change, in both channels with a ratio of their own.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Kind">Course of the movement.</param>
/// <param name="Size">Peak to trough over that of the pulse, in infrared; for a random course that of the sine of equal power.</param>
/// <param name="Hz">Frequency of a rhythmic movement.</param>
/// <param name="Ratio">Ratio of ratios of the movement: red absorbance over infrared absorbance.</param>
/// <param name="Apart">Share of red's movement, by amplitude, that infrared does not know, 0 to 1: 0 mixes perfectly.</param>
/// <param name="Channels">Which channels move.</param>
public sealed record MotionEpisode(
    double FromSeconds,
    double ToSeconds,
    MotionKind Kind = MotionKind.Broadband,
    double Size = 2,
    double Hz = 1.5,
    double Ratio = 1,
    double Apart = 0.2,
    LightChannels Channels = LightChannels.Both) : Episode(FromSeconds, ToSeconds)
{
    private const double EdgeSeconds = 0.3;

    // Peak to trough of a sine in deviations.
    private const double SineRange = 2 * 1.4142135623730951;

    // m/s² per size of movement, along and across the finger; invented, of the order of a fidgeting hand.
    private const double AccelerationAlong = 0.6;
    private const double AccelerationAcross = 0.25;

    /// <inheritdoc/>
    public override Disturbances Disturbance => Disturbances.Motion;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        var size = Size * Presence(now.Seconds, EdgeSeconds);
        var shared = MotionCourse.Shared(this, now, seed);
        var own = MotionCourse.Broadband(now.Seconds, unchecked(seed + 1));
        var absorbance = size * now.PulseAbsorbance / SineRange;
        if (Channels != LightChannels.Red)
        {
            path.InfraredAbsorbance += absorbance * shared;
        }

        if (Channels != LightChannels.Infrared)
        {
            path.RedAbsorbance += absorbance * Ratio * ((Math.Sqrt(1 - (Apart * Apart)) * shared) + (Apart * own));
        }

        path.AccelerationX += size * AccelerationAlong * shared;
        path.AccelerationY += size * AccelerationAcross * shared;
        path.AccelerationZ += size * AccelerationAcross * own;
    }
}
