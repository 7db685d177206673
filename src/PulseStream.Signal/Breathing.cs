namespace PulseStream.Signal;

/// <summary>How strongly the light breathes beside the pulse.</summary>
/// <remarks>A Hann window keeps the pulse out: a wave of 0.8 Hz leaks less than a hundredth of itself to 0.4 Hz through it (Harris, Proc IEEE 1978;66:51).</remarks>
internal static class Breathing
{
    /// <summary>Root mean square of the strongest slow wave of infrared, natural logarithm of light.</summary>
    /// <param name="pairs">Infrared and red in turn, baseline removed.</param>
    /// <param name="binRateHz">Bins a second.</param>
    public static double SizeIn(ReadOnlySpan<double> pairs, double binRateHz)
    {
        // Twelve to twenty-four breaths a minute, as far apart as eight seconds resolve.
        ReadOnlySpan<double> frequenciesHz = [0.2, 0.3, 0.4];
        var largest = 0.0;
        foreach (var hz in frequenciesHz)
        {
            largest = Math.Max(largest, PowerAt(hz / binRateHz, pairs));
        }

        return Math.Sqrt(largest);
    }

    private static double PowerAt(double cyclesPerBin, ReadOnlySpan<double> pairs)
    {
        double cosines = 0, sines = 0, weights = 0;
        var length = pairs.Length / 2;
        for (var n = 0; n < length; n++)
        {
            var weight = 0.5 - (0.5 * Math.Cos(2 * Math.PI * (n + 0.5) / length));
            var (sine, cosine) = Math.SinCos(2 * Math.PI * cyclesPerBin * n);
            cosines += weight * pairs[2 * n] * cosine;
            sines += weight * pairs[2 * n] * sine;
            weights += weight;
        }

        return 2 * ((cosines * cosines) + (sines * sines)) / (weights * weights);
    }
}
