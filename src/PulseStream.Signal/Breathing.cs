using System.Numerics;

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
        // Hann's weight is a cosine itself: turned from bin to bin, neither asks for one of its own.
        var length = pairs.Length / 2;
        var half = Complex.FromPolarCoordinates(1, Math.PI / length);
        var (hann, wave) = (half, Complex.One);
        var (hannStep, waveStep) = (half * half, Complex.FromPolarCoordinates(1, 2 * Math.PI * cyclesPerBin));
        var sum = Complex.Zero;
        var weights = 0.0;
        for (; pairs.Length > 1; pairs = pairs[2..])
        {
            var weight = 0.5 - (0.5 * hann.Real);
            sum += weight * pairs[0] * wave;
            weights += weight;
            hann *= hannStep;
            wave *= waveStep;
        }

        return 2 * ((sum.Real * sum.Real) + (sum.Imaginary * sum.Imaginary)) / (weights * weights);
    }
}
