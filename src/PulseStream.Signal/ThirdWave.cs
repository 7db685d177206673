using System.Numerics;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// How much of a wave is its third harmonic. What swings has a first one and, pushed, a second; blood that is thrown has a
/// third as well, even where a strong second wave makes it fall as steeply as it rises.
/// </summary>
/// <remarks>One product a bin for each Fourier sum: G. Goertzel, Am Math Mon 1958;65:34.</remarks>
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

        Complex firsts = 0, thirds = 0;
        for (var beat = 1; beat + 2 < rises.Length; beat++)
        {
            var start = (int)Math.Ceiling(rises[beat]);
            var end = (int)Math.Ceiling(rises[beat + 1]);
            var turn = 2 * Math.PI / (rises[beat + 1] - rises[beat]);
            var first = TurnedBy(turn);
            var third = first * first * first;
            var begun = TurnedBy(turn * (start - rises[beat]));
            var (newest, before) = FoldBack(volumes[start..end], Vector128.Create(2 * first.Real, 2 * third.Real));
            firsts += begun * (newest[0] - (before[0] * Complex.Conjugate(first)));
            thirds += begun * begun * begun * (newest[1] - (before[1] * Complex.Conjugate(third)));
        }

        return Math.Sqrt(PowerOf(thirds) / PowerOf(firsts));
    }

    private static Complex TurnedBy(double angle)
    {
        var (sine, cosine) = Math.SinCos(angle);
        return new(cosine, sine);
    }

    // Both waves at once, from the last value to the first.
    private static (Vector128<double> Newest, Vector128<double> Before) FoldBack(ReadOnlySpan<double> values, Vector128<double> twiceCosine)
    {
        Vector128<double> newest = default, before = default;
        for (var n = values.Length - 1; n >= 0; n--)
        {
            var next = Vector128.FusedMultiplyAdd(newest, twiceCosine, Vector128.Create(values[n]) - before);
            before = newest;
            newest = next;
        }

        return (newest, before);
    }

    private static double PowerOf(Complex value) => (value.Real * value.Real) + (value.Imaginary * value.Imaginary);
}
