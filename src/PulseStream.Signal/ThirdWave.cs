using System.Numerics;

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
            // A turn by so much for each bin, begun anew at each beat: no sine has to be looked up for a bin.
            var start = (int)Math.Ceiling(rises[beat]);
            var turn = 2 * Math.PI / (rises[beat + 1] - rises[beat]);
            var first = new Complex(Math.Cos(turn * (start - rises[beat])), Math.Sin(turn * (start - rises[beat])));
            var step = new Complex(Math.Cos(turn), Math.Sin(turn));
            for (var n = start; n < rises[beat + 1]; n++)
            {
                var third = first * first * first;
                firstCosine += volumes[n] * first.Real;
                firstSine += volumes[n] * first.Imaginary;
                thirdCosine += volumes[n] * third.Real;
                thirdSine += volumes[n] * third.Imaginary;
                first *= step;
            }
        }

        return Math.Sqrt(((thirdCosine * thirdCosine) + (thirdSine * thirdSine)) / ((firstCosine * firstCosine) + (firstSine * firstSine)));
    }
}
