namespace PulseStream.Signal;

/// <summary>Where samples are few, the upper waves of a rapid pulse pass for white noise: both lights have them, as they have no noise. What shakes so fast, or a lamp, has most of itself up there.</summary>
internal static class RapidPulseNoise
{
    // Root mean square frequency of a narrow pulse over its rate, as far as it lies in the band; of shaking two of whose periods are taken for one, 2.
    private const double MostOfPulseRate = 1.6;

    /// <summary>How much of what passes for white noise is noise, root mean squares; 1 where it is no pulse.</summary>
    /// <param name="course">Blood volume of the window and its slope.</param>
    /// <param name="periodSeconds">The period with which it repeats, s.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="noise">What passes for noise.</param>
    /// <param name="ratio">R.</param>
    public static double ShareOf(BloodCourse course, double periodSeconds, double binRateHz, in WhiteNoise noise, double ratio) =>
        noise.Infrared > 0 && WaveShape.Of(course, 0, binRateHz).FrequencyHz * periodSeconds < MostOfPulseRate
            ? Math.Sqrt(noise.WithoutPulse(ratio).Infrared / noise.Infrared)
            : 1;
}
