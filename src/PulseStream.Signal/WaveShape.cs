using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>What tells a pulse from shaking in the course of a window: blood comes faster than it goes, or stays up for a shorter time than down.</summary>
/// <param name="FrontSteepness">Skewness of the slope of blood volume, white noise taken out: above 0 where it comes faster than it goes.</param>
/// <param name="Crest">Skewness of blood volume: above 0 where it is high for a shorter time than low.</param>
/// <param name="FrequencyHz">Root mean square frequency, Hz, white noise taken out of the slope: the rate of a sine, more with harmonics.</param>
internal readonly record struct WaveShape(double FrontSteepness, double Crest, double FrequencyHz)
{
    // Noise can make up most of a weak pulse's slope; what is left is not taken for less than this share of it.
    private const double LeastPulseShare = 0.2;

    // At its ends a window bends towards the slow fit.
    private const double EdgeSeconds = 0.2;

    /// <summary>Measures a window.</summary>
    /// <param name="course">Blood volume, slow part removed, and its slope.</param>
    /// <param name="slopeNoise">Variance of white noise in a central difference of two bins.</param>
    /// <param name="binRateHz">Bins a second.</param>
    public static WaveShape Of(BloodCourse course, double slopeNoise, double binRateHz)
    {
        var edge = 1 + (int)(EdgeSeconds * binRateHz);
        var volumes = course.Volumes[edge..^edge];
        var slopes = course.Slopes[edge..^edge];
        Vector128<double> sums = default, squares = default, cubes = default, slopeSquares = default, slopeCubes = default;
        for (var n = 0; n < volumes.Length; n += 2)
        {
            var isPair = n + 1 < volumes.Length;
            var volume = isPair ? BloodCourse.TwoAt(volumes, n) : Vector128.CreateScalar(volumes[n]);
            var slope = isPair ? BloodCourse.TwoAt(slopes, n) : Vector128.CreateScalar(slopes[n]);
            var square = volume * volume;
            var slopeSquare = slope * slope;
            sums += volume;
            squares += square;
            slopeSquares += slopeSquare;
            cubes = Vector128.FusedMultiplyAdd(square, volume, cubes);
            slopeCubes = Vector128.FusedMultiplyAdd(slopeSquare, slope, slopeCubes);
        }

        var count = volumes.Length;
        var mean = Vector128.Sum(sums) / count;
        var meanSquare = Vector128.Sum(squares) / count;
        var third = (Vector128.Sum(cubes) / count) - (3 * mean * meanSquare) + (2 * mean * mean * mean);
        var slopeVariance = Vector128.Sum(slopeSquares) / count;
        var ofPulse = Math.Max(slopeVariance - slopeNoise, slopeVariance * LeastPulseShare);
        var variance = meanSquare - (mean * mean);
        return new(Skewness(Vector128.Sum(slopeCubes) / count, ofPulse), Skewness(third, variance), FrequencyOf(ofPulse, variance, binRateHz));
    }

    // The second moment of a spectrum (Bendat, Piersol, Random Data, chapter 5); a slope is taken over two bins.
    private static double FrequencyOf(double slopeVariance, double variance, double binRateHz) =>
        variance > 0 ? binRateHz * Math.Sqrt(slopeVariance / variance) / (4 * Math.PI) : 0;

    private static double Skewness(double third, double variance) => variance > 0 ? third / (variance * Math.Sqrt(variance)) : 0;
}
