namespace PulseStream.Accuracy.Calibration;

/// <summary>A falling polynomial that a minority of wild points does not pull.</summary>
/// <remarks>
/// Biweight (A. E. Beaton, J. W. Tukey, Technometrics 1974;16:147-185) from a start by medians of slopes (P. K. Sen, JASA
/// 1968;63:1379-1389), which holds up to 29 % of wild points.
/// </remarks>
internal sealed class RobustFit
{
    // 95 % as sharp as least squares where nothing is wild.
    private const double BiweightReach = 4.685;

    // Median of absolute normal deviates over their standard deviation.
    private const double MedianOfNormal = 0.6745;

    // Far below any reference's resolution: points that fit exactly are not told apart by rounding.
    private const double LeastScale = 1e-6;

    private const int MostRounds = 40;
    private const double Settled = 1e-9;

    // Slopes between all points grow with the square of their number.
    private const int MostForSlopes = 400;

    private RobustFit(double[] coefficients, double[] weights) => (Coefficients, Weights) = (coefficients, weights);

    /// <summary>In ascending powers of the ratio.</summary>
    public double[] Coefficients { get; }

    /// <summary>Weight of each pair, 0 for an outlier.</summary>
    public double[] Weights { get; }

    /// <summary>Fits a degree.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="degree">1 to 3.</param>
    /// <returns>Null where the pairs do not tell the curve.</returns>
    public static RobustFit? Of(IReadOnlyList<RatioPair> pairs, int degree)
    {
        if (StartOf(pairs) is not { } coefficients)
        {
            return null;
        }

        var weights = WeightsOf(pairs, coefficients);
        for (var round = 0; round < MostRounds; round++)
        {
            // What is wild now does not count towards the range, or one slip would decide where the curve has to fall.
            var (from, to) = RangeOf(pairs, weights);
            if (!(to > from) || FallingPolynomial.Fit([.. pairs.Select((pair, i) => new WeightedPoint(pair.Ratio, pair.Reference, weights[i]))], degree, from, to) is not { } next)
            {
                return null;
            }

            var change = pairs.Max(pair => Math.Abs(FallingPolynomial.At(next, pair.Ratio) - FallingPolynomial.At(coefficients, pair.Ratio)));
            coefficients = next;
            weights = WeightsOf(pairs, coefficients);
            if (change < Settled)
            {
                break;
            }
        }

        return new(coefficients, weights);
    }

    /// <summary>Range of the ratios that are no outliers.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="weights">Their weights.</param>
    public static (double From, double To) RangeOf(IReadOnlyList<RatioPair> pairs, double[] weights)
    {
        var kept = pairs.Where((_, i) => weights[i] > 0).Select(pair => pair.Ratio).DefaultIfEmpty(0).ToArray();
        return (kept.Min(), kept.Max());
    }

    private static double[]? StartOf(IReadOnlyList<RatioPair> pairs)
    {
        var stride = Math.Max(1, pairs.Count / MostForSlopes);
        var some = pairs.OrderBy(pair => pair.Ratio).Where((_, i) => i % stride == 0).ToArray();
        var slopes = new List<double>();
        for (var i = 0; i < some.Length; i++)
        {
            for (var j = i + 1; j < some.Length; j++)
            {
                if (some[j].Ratio > some[i].Ratio)
                {
                    slopes.Add((some[j].Reference - some[i].Reference) / (some[j].Ratio - some[i].Ratio));
                }
            }
        }

        if (slopes.Count == 0)
        {
            return null;
        }

        var slope = MedianOf(slopes);
        return [MedianOf(pairs.Select(pair => pair.Reference - (slope * pair.Ratio))), slope];
    }

    private static double[] WeightsOf(IReadOnlyList<RatioPair> pairs, double[] coefficients)
    {
        var residuals = pairs.Select(pair => pair.Reference - FallingPolynomial.At(coefficients, pair.Ratio)).ToArray();
        var reach = BiweightReach * Math.Max(LeastScale, MedianOf(residuals.Select(Math.Abs)) / MedianOfNormal);
        return [.. residuals.Select(residual => Math.Abs(residual) < reach ? Math.Pow(1 - Math.Pow(residual / reach, 2), 2) : 0)];
    }

    private static double MedianOf(IEnumerable<double> values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
