namespace PulseStream.Signal;

/// <summary>What tells a pulse from shaking in the course of a window: blood comes faster than it goes, or stays up for a shorter time than down.</summary>
/// <param name="FrontSteepness">Skewness of the slope of blood volume, white noise taken out: above 0 where it comes faster than it goes.</param>
/// <param name="Crest">Skewness of blood volume: above 0 where it is high for a shorter time than low.</param>
internal readonly record struct WaveShape(double FrontSteepness, double Crest)
{
    // Noise can make up most of a weak pulse's slope; what is left is not taken for less than this share of it.
    private const double LeastPulseShare = 0.2;

    // At its ends a window bends towards the slow fit.
    private const double EdgeSeconds = 0.2;

    /// <summary>Measures a window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed; blood volume is minus infrared.</param>
    /// <param name="slopeNoise">Variance of white noise in a central difference of two bins.</param>
    /// <param name="binRateHz">Bins a second.</param>
    public static WaveShape Of(ReadOnlySpan<double> pairs, double slopeNoise, double binRateHz)
    {
        var edge = 1 + (int)(EdgeSeconds * binRateHz);
        var count = (pairs.Length / 2) - (2 * edge);
        double sum = 0, square = 0, cube = 0, slopeSquare = 0, slopeCube = 0;
        for (var n = edge; n < edge + count; n++)
        {
            var volume = -pairs[2 * n];
            var slope = pairs[2 * (n - 1)] - pairs[2 * (n + 1)];
            sum += volume;
            square += volume * volume;
            cube += volume * volume * volume;
            slopeSquare += slope * slope;
            slopeCube += slope * slope * slope;
        }

        var mean = sum / count;
        var variance = (square / count) - (mean * mean);
        var third = (cube / count) - (3 * mean * square / count) + (2 * mean * mean * mean);
        var slopeVariance = slopeSquare / count;
        var ofPulse = Math.Max(slopeVariance - slopeNoise, slopeVariance * LeastPulseShare);
        return new(Skewness(slopeCube / count, ofPulse), Skewness(third, variance));
    }

    private static double Skewness(double third, double variance) => variance > 0 ? third / (variance * Math.Sqrt(variance)) : 0;
}
