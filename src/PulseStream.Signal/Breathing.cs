using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>How strongly the light breathes beside the pulse in a window.</summary>
/// <remarks>
/// A Hann window keeps the pulse out: a wave of 0.8 Hz leaks less than a hundredth of itself to 0.4 Hz through it (Harris, Proc IEEE
/// 1978;66:51). The baseline is taken out of the waves that are looked for, which leaves it out of what they find.
/// </remarks>
internal sealed class Breathing
{
    // Twelve to twenty-four breaths a minute, as far apart as eight seconds resolve.
    private static readonly double[] FrequenciesHz = [0.2, 0.3, 0.4];

    private readonly Vector128<double>[][] waves;

    /// <summary>Designs the waves of a window.</summary>
    /// <param name="baseline">What is no breath in it.</param>
    /// <param name="binRateHz">Bins a second.</param>
    public Breathing(SlowBasis baseline, double binRateHz) => waves = [.. FrequenciesHz.Select(hz => WaveOf(hz / binRateHz, baseline))];

    /// <summary>Root mean square of the strongest slow wave of infrared, natural logarithm of light.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    public double SizeIn(ReadOnlySpan<double> pairs)
    {
        var largest = 0.0;
        foreach (var wave in waves)
        {
            largest = Math.Max(largest, PowerOf(wave, MemoryMarshal.Cast<double, Vector128<double>>(pairs)));
        }

        return Math.Sqrt(largest);
    }

    private static double PowerOf(ReadOnlySpan<Vector128<double>> wave, ReadOnlySpan<Vector128<double>> lights)
    {
        Vector128<double> even = default, odd = default;
        for (; lights.Length > 1; lights = lights[2..], wave = wave[2..])
        {
            even = Vector128.FusedMultiplyAdd(wave[0], Vector128.Create(lights[0].ToScalar()), even);
            odd = Vector128.FusedMultiplyAdd(wave[1], Vector128.Create(lights[1].ToScalar()), odd);
        }

        var sum = lights.IsEmpty ? even + odd : Vector128.FusedMultiplyAdd(wave[0], Vector128.Create(lights[0].ToScalar()), even + odd);
        return Vector128.Sum(sum * sum);
    }

    // Cosine and sine in turn, weighed so that the square of what both find is the wave's mean square.
    private static Vector128<double>[] WaveOf(double cyclesPerBin, SlowBasis baseline)
    {
        var wave = new Vector128<double>[baseline.Length];
        var weights = 0.0;
        for (var n = 0; n < wave.Length; n++)
        {
            var weight = 0.5 - (0.5 * Math.Cos(2 * Math.PI * (n + 0.5) / wave.Length));
            var (sine, cosine) = Math.SinCos(2 * Math.PI * cyclesPerBin * n);
            wave[n] = weight * Vector128.Create(cosine, sine);
            weights += weight;
        }

        foreach (ref var place in wave.AsSpan())
        {
            place *= Math.Sqrt(2) / weights;
        }

        baseline.Remove(MemoryMarshal.Cast<Vector128<double>, double>(wave.AsSpan()));
        return wave;
    }
}
