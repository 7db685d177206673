namespace PulseStream.Signal;

/// <summary>
/// How much of a wave is its third harmonic. What swings has a first one and, pushed, a second; blood that is thrown has a
/// third as well, even where a strong second wave makes it fall as steeply as it rises.
/// </summary>
internal static class ThirdWave
{
    // Two whole intervals between those at the ends, which the slow fit bends.
    private const int FewestBeats = 5;

    /// <summary>Amplitude of the third harmonic over that of the first, by Fourier sums over the phase between beats; NaN with too few beats.</summary>
    /// <param name="volumes">Blood volume, slow part removed.</param>
    /// <param name="rises">Steepest rises, bins.</param>
    public static double ShareOf(ReadOnlySpan<double> volumes, ReadOnlySpan<double> rises)
    {
        if (rises.Length < FewestBeats)
        {
            return double.NaN;
        }

        double firstCosine = 0, firstSine = 0, thirdCosine = 0, thirdSine = 0;
        for (var beat = 1; beat + 2 < rises.Length; beat++)
        {
            var turn = 2 * Math.PI / (rises[beat + 1] - rises[beat]);
            for (var n = (int)Math.Ceiling(rises[beat]); n < rises[beat + 1]; n++)
            {
                var phase = turn * (n - rises[beat]);
                var (sine, cosine) = Math.SinCos(phase);
                firstCosine += volumes[n] * cosine;
                firstSine += volumes[n] * sine;
                (sine, cosine) = Math.SinCos(3 * phase);
                thirdCosine += volumes[n] * cosine;
                thirdSine += volumes[n] * sine;
            }
        }

        return Math.Sqrt(((thirdCosine * thirdCosine) + (thirdSine * thirdSine)) / ((firstCosine * firstCosine) + (firstSine * firstSine)));
    }
}
