using PulseStream.Simulation.Light;

namespace PulseStream.Simulation.Episodes;

/// <summary>Venous blood pulsates with the heart: a hanging hand, a clip too tight.</summary>
/// <param name="FromSeconds">Start.</param>
/// <param name="ToSeconds">End.</param>
/// <param name="Size">Peak to trough over that of the arterial pulse, in infrared.</param>
/// <param name="Ratio">Ratio of ratios of venous blood; 1.6 is a saturation of 70 % on the textbook line.</param>
/// <param name="Lag">Delay behind the arterial pulse, in beats.</param>
public sealed record VenousEpisode(
    double FromSeconds,
    double ToSeconds,
    double Size = 1,
    double Ratio = 1.6,
    double Lag = 0.2) : Episode(FromSeconds, ToSeconds)
{
    private const double EdgeSeconds = 1;

    // A rounder wave than the arterial one.
    private const double SecondHarmonic = 0.2;

    /// <inheritdoc/>
    public override Disturbances Disturbance => Disturbances.Venous;

    internal override void Act(in Instant now, ulong seed, ref OpticalPath path)
    {
        var phase = Math.Tau * (now.BeatPhase - Lag);
        var wave = Math.Sin(phase) + (SecondHarmonic * Math.Sin(2 * phase));
        var absorbance = Size * Presence(now.Seconds, EdgeSeconds) * now.PulseAbsorbance / 2 * wave;
        path.InfraredAbsorbance += absorbance;
        path.RedAbsorbance += Ratio * absorbance;
    }
}
