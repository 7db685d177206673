using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// How a window bends: its second difference over a beat's front. What vessels and breath drift by falls with the square of its
/// frequency, and least squares of it see a little of it where the slow pulse's first wave is; bent, it is as white as noise is,
/// and every wave of the pulse speaks for R by as much as it stands out.
/// </summary>
/// <remarks>Source: least squares are best where what is left over is white (A. C. Aitken, Proc R Soc Edinb 1936;55:42).</remarks>
internal sealed class Curvature
{
    // Of a shorter step white noise becomes the most of it, of a longer one waves of 5 Hz vanish.
    private const double StepSeconds = 0.08;

    // Root mean square frequency of the fastest pulse, 220 beats a minute, with its harmonics.
    private const double FastestHz = 4;
    private readonly int step;

    public Curvature(SmoothingKernel kernel, double binRateHz)
    {
        step = Math.Max(1, (int)Math.Round(StepSeconds * binRateHz));
        GainOfFastest = 4 * Math.Pow(Math.Sin(Math.PI * FastestHz * step / binRateHz), 2);
        var response = Response(kernel.Taps);
        var gain = Correlation(response, 0);
        var squares = gain * gain;
        for (var lag = 1; lag < response.Length; lag++)
        {
            squares += 2 * Correlation(response, lag) * Correlation(response, lag);
        }

        FreedomPerBin = gain * gain / squares;
        NoisePerFreedom = gain / FreedomPerBin;
    }

    /// <summary>Degrees of freedom that white noise has in each place.</summary>
    public double FreedomPerBin { get; }

    /// <summary>Variance that a degree of freedom has of white noise of variance 1.</summary>
    public double NoisePerFreedom { get; }

    /// <summary>Curvature of the fastest pulse over the pulse, root mean squares.</summary>
    public double GainOfFastest { get; }

    /// <summary>Places of a window that have one.</summary>
    /// <param name="bins">Places of the window.</param>
    public int LengthOf(int bins) => bins - (2 * step);

    /// <summary>Bends a window.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="room">Where its curvature is left.</param>
    /// <returns>The curvature, infrared and red in turn.</returns>
    public Span<double> Of(ReadOnlySpan<double> pairs, Span<double> room)
    {
        var curved = room[..(2 * LengthOf(pairs.Length / 2))];
        var from = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var to = MemoryMarshal.Cast<double, Vector128<double>>(curved);
        for (var n = 0; n < to.Length; n++)
        {
            to[n] = from[n] + from[n + (2 * step)] - (from[n + step] + from[n + step]);
        }

        return curved;
    }

    private double[] Response(double[] taps)
    {
        var response = new double[taps.Length + (2 * step)];
        for (var n = 0; n < taps.Length; n++)
        {
            response[n] += taps[n];
            response[n + step] -= 2 * taps[n];
            response[n + (2 * step)] += taps[n];
        }

        return response;
    }

    private static double Correlation(double[] response, int lag)
    {
        var sum = 0.0;
        for (var n = lag; n < response.Length; n++)
        {
            sum += response[n] * response[n - lag];
        }

        return sum;
    }
}
