using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>How far a wave repeats itself after each of many lags.</summary>
/// <remarks>Lags in the lanes of a fixed width: each sum has the order of the plain loop, on every processor.</remarks>
internal sealed class Autocorrelation
{
    private const int Lanes = 2;
    private const int LagsAtOnce = 6 * Lanes;
    private readonly double[] wave;
    private readonly double[] values;

    /// <param name="mostPoints">Longest wave.</param>
    /// <param name="longestLag">Longest lag.</param>
    public Autocorrelation(int mostPoints, int longestLag)
    {
        // Zeros behind the wave: every lag then runs over the same places, and adds nothing where it reaches beyond the end.
        wave = new double[mostPoints + longestLag + LagsAtOnce];
        values = new double[longestLag + LagsAtOnce];
    }

    /// <summary>Room for the wave's values.</summary>
    public Span<double> Wave(int points)
    {
        wave.AsSpan(points).Clear();
        return wave.AsSpan(0, points);
    }

    /// <summary>Correlates the wave with itself; indexed by lag, meaningful between the two lags.</summary>
    /// <param name="points">Values in <see cref="Wave"/>.</param>
    /// <param name="shortest">Shortest lag.</param>
    /// <param name="longest">Longest lag.</param>
    public ReadOnlySpan<double> Of(int points, int shortest, int longest)
    {
        for (var lag = shortest; lag <= longest; lag += LagsAtOnce)
        {
            Correlate(points - lag, lag);
        }

        Normalise(wave.AsSpan(0, points), shortest, longest);
        return values;
    }

    // A lag compares all but the last values with all but the first ones.
    private void Normalise(ReadOnlySpan<double> points, int shortest, int longest)
    {
        var early = Energy(points[..^shortest]);
        var late = Energy(points[shortest..]);
        for (var lag = shortest; lag <= longest; lag++)
        {
            values[lag] = early > 0 && late > 0 ? values[lag] / Math.Sqrt(early * late) : 0;
            early -= points[^(lag + 1)] * points[^(lag + 1)];
            late -= points[lag] * points[lag];
        }
    }

    private static double Energy(ReadOnlySpan<double> points)
    {
        Vector128<double> sum = default;
        foreach (var pair in MemoryMarshal.Cast<double, Vector128<double>>(points))
        {
            sum = Vector128.FusedMultiplyAdd(pair, pair, sum);
        }

        var last = points.Length % Lanes != 0 ? points[^1] : 0;
        return sum[0] + sum[1] + (last * last);
    }

    private void Correlate(int points, int lag)
    {
        Vector128<double> a = default, b = default, c = default, d = default, e = default, f = default;
        ref var first = ref wave[0];

        // Cut once to all that the loop reads: no check is needed within it.
        ref var lagged = ref MemoryMarshal.GetReference(wave.AsSpan(lag, points + LagsAtOnce));
        for (nuint n = 0; n < (nuint)points; n++)
        {
            var here = Vector128.Create(Unsafe.Add(ref first, n));
            a = Vector128.FusedMultiplyAdd(here, Vector128.LoadUnsafe(ref lagged, n), a);
            b = Vector128.FusedMultiplyAdd(here, Vector128.LoadUnsafe(ref lagged, n + 2), b);
            c = Vector128.FusedMultiplyAdd(here, Vector128.LoadUnsafe(ref lagged, n + 4), c);
            d = Vector128.FusedMultiplyAdd(here, Vector128.LoadUnsafe(ref lagged, n + 6), d);
            e = Vector128.FusedMultiplyAdd(here, Vector128.LoadUnsafe(ref lagged, n + 8), e);
            f = Vector128.FusedMultiplyAdd(here, Vector128.LoadUnsafe(ref lagged, n + 10), f);
        }

        var sums = MemoryMarshal.Cast<double, Vector128<double>>(values.AsSpan(lag, LagsAtOnce));
        sums[0] = a;
        sums[1] = b;
        sums[2] = c;
        sums[3] = d;
        sums[4] = e;
        sums[5] = f;
    }
}
