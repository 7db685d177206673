namespace PulseStream.Signal;

/// <summary>
/// The mixture of the two lights that repeats best with a period near the calm pulse's. Movement repeats otherwise, or not
/// at all, and is what this mixture leaves out.
/// </summary>
/// <remarks>
/// Source: periodic component analysis, R. Sameni, C. Jutten, M. B. Shamsollahi, IEEE Trans Biomed Eng 2008;55:1935 (from
/// memory): the largest generalised eigenvalue of the covariance at a lag and that at none, here of two channels.
/// </remarks>
internal static class PeriodicDirection
{
    private const double ShortestShare = 0.8;
    private const double LongestShare = 1.25;

    /// <summary>Weights of infrared and red in the mixture, of any sign.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="periodBins">Period of the calm pulse, bins.</param>
    public static (double Infrared, double Red) Find(ReadOnlySpan<double> pairs, double periodBins)
    {
        var (ii, ir, rr) = Covariance(pairs, 0);

        // Red is replaced by what infrared does not explain of it, so that the covariance at no lag is the identity.
        var share = ir / ii;
        var infraredScale = 1 / Math.Sqrt(ii);
        var restScale = 1 / Math.Sqrt(Math.Max(rr - (share * ir), 1e-12 * rr));
        var best = (Value: double.NegativeInfinity, X: 1.0, Y: 0.0);
        for (var lag = (int)(ShortestShare * periodBins); lag <= (int)(LongestShare * periodBins) && 4 * lag < pairs.Length; lag++)
        {
            var (a, b, c) = Covariance(pairs, lag);
            var aa = a * infraredScale * infraredScale;
            var ab = (b - (share * a)) * infraredScale * restScale;
            var bb = (c - (2 * share * b) + (share * share * a)) * restScale * restScale;
            var (value, x, y) = Largest(aa, ab, bb);
            best = value > best.Value ? (value, x, y) : best;
        }

        return ((best.X * infraredScale) - (best.Y * restScale * share), best.Y * restScale);
    }

    private static (double Infrared, double Cross, double Red) Covariance(ReadOnlySpan<double> pairs, int lag)
    {
        double ii = 0, ir = 0, rr = 0;
        var shift = 2 * lag;
        for (var n = 0; n + shift + 1 < pairs.Length; n += 2)
        {
            var i = pairs[n];
            var r = pairs[n + 1];
            var laterI = pairs[n + shift];
            var laterR = pairs[n + shift + 1];
            ii += i * laterI;
            ir += 0.5 * ((i * laterR) + (r * laterI));
            rr += r * laterR;
        }

        var count = (pairs.Length / 2) - lag;
        return (ii / count, ir / count, rr / count);
    }

    // Largest eigenvalue of [aa ab; ab bb] and its vector.
    private static (double Value, double X, double Y) Largest(double aa, double ab, double bb)
    {
        var half = 0.5 * (aa - bb);
        var root = Math.Sqrt((half * half) + (ab * ab));
        var (x, y) = half >= 0 ? (half + root, ab) : (ab, root - half);
        var size = Math.Sqrt((x * x) + (y * y));
        return size > 0 ? ((0.5 * (aa + bb)) + root, x / size, y / size) : (aa, 1, 0);
    }
}
