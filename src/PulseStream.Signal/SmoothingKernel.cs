using System.Diagnostics;
using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>A symmetric low-pass of unit gain at zero frequency, and what it does to white noise.</summary>
/// <remarks>Windowed sinc with a Hamming window: Oppenheim, Schafer, Discrete-Time Signal Processing, chapter 7.</remarks>
internal sealed class SmoothingKernel
{
    private const double HalfSeconds = 0.1;

    public SmoothingKernel(double edgeHz, double rateHz)
    {
        Half = Math.Max(1, (int)Math.Round(HalfSeconds * rateHz));
        Taps = new double[(2 * Half) + 1];
        var cutoff = 2 * Math.Min(edgeHz, 0.4 * rateHz) / rateHz;
        var sum = 0.0;
        for (var i = -Half; i <= Half; i++)
        {
            var sinc = i == 0 ? cutoff : Math.Sin(Math.PI * cutoff * i) / (Math.PI * i);
            Taps[i + Half] = sinc * (0.54 + (0.46 * Math.Cos(Math.PI * i / (Half + 1))));
            sum += Taps[i + Half];
        }

        for (var i = 0; i < Taps.Length; i++)
        {
            Taps[i] /= sum;
            NoiseGain += Taps[i] * Taps[i];
        }

        RestNoiseGain = 1 - (2 * Taps[Half]) + NoiseGain;
        for (var i = -1; i <= Taps.Length; i++)
        {
            var difference = TapAt(i + 1) - TapAt(i - 1);
            SlopeNoiseGain += difference * difference;
        }
    }

    /// <summary>Samples on either side of the centre: the delay.</summary>
    public int Half { get; }

    /// <summary>Weights, centre at <see cref="Half"/>, sum 1.</summary>
    public double[] Taps { get; }

    /// <summary>Variance of smoothed white noise of variance 1.</summary>
    public double NoiseGain { get; }

    /// <summary>Variance of what smoothing takes away from white noise of variance 1.</summary>
    public double RestNoiseGain { get; }

    /// <summary>Variance of the central difference (two steps, not divided) of smoothed white noise of variance 1.</summary>
    public double SlopeNoiseGain { get; }

    /// <summary>Smooths two lights at the centre of a window.</summary>
    /// <param name="window">As many bins as there are <see cref="Taps"/>, infrared and red in each.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public Vector128<double> Smooth(ReadOnlySpan<Vector128<double>> window)
    {
        // Bins at the same distance have the same weight: one product for both.
        Debug.Assert(window.Length == Taps.Length);
        var taps = Taps.AsSpan(0, Half);
        var sum = window[Half] * Taps[Half];
        ref readonly var early = ref window[0];
        ref readonly var late = ref window[^1];
        foreach (var tap in taps)
        {
            sum = Vector128.FusedMultiplyAdd(early + late, Vector128.Create(tap), sum);
            early = ref Unsafe.Add(ref Unsafe.AsRef(in early), 1);
            late = ref Unsafe.Subtract(ref Unsafe.AsRef(in late), 1);
        }

        return sum;
    }

    /// <summary>What smoothing leaves of a steady wave, 1 at zero frequency.</summary>
    /// <param name="cyclesPerBin">Its frequency.</param>
    public double GainAt(double cyclesPerBin)
    {
        var gain = Taps[Half];
        for (var k = 1; k <= Half; k++)
        {
            gain += 2 * Taps[Half + k] * Math.Cos(2 * Math.PI * cyclesPerBin * k);
        }

        return gain;
    }

    private double TapAt(int i) => i >= 0 && i < Taps.Length ? Taps[i] : 0;
}
