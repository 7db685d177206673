namespace PulseStream.Accuracy.Statistics;

/// <summary>
/// 95 % intervals of A_rms and precision: the bootstrap's over subjects, whose upper end lies no nearer than it would for
/// normally distributed errors.
/// </summary>
/// <remarks>
/// Ten subjects seldom hold one that is far off, and a bootstrap draws none that is not there: alone it misses the truth
/// above it 7 to 9 times in 100. F. E. Satterthwaite, Biometrics Bull 1946;2:110-114: a mean square is laid out like a
/// chi-square of as many degrees of freedom as its variance tells; with one pair a subject this is the textbook's
/// (n − 1)s²/χ². `coverage` in the benchmarks measures both together.
/// </remarks>
internal static class RootInterval
{
    private const double Tail = 0.025;

    // With more the end lies less than a thousandth beyond the estimate, and takes long to find.
    private const double MostFreedom = 1e6;

    /// <summary>Of A_rms; null where there are fewer than two subjects.</summary>
    public static ConfidenceInterval? OfArms(SubjectSums[] subjects)
    {
        if (StudentisedBootstrap.OfRoot(subjects, aboutMean: false) is not { } drawn)
        {
            return null;
        }

        var total = SubjectSums.Total(subjects);
        var error = MeanError.Of(subjects);
        var ofBias = error.Variance!.Value;
        var biasSquare = Math.Max(0, (error.Bias * error.Bias) - ofBias);

        // A mean square is the square of the bias and the variance about it, and the two are independent.
        var ofSquare = VarianceParts.Of(subjects).OfTotal + (4 * biasSquare * ofBias) + (2 * ofBias * ofBias);
        return drawn with { High = Math.Max(drawn.High, UpperEnd(total.SquareSum / total.Count, ofSquare)) };
    }

    /// <summary>Of precision, divisor n − 1; null where there are fewer than two subjects.</summary>
    public static ConfidenceInterval? OfPrecision(SubjectSums[] subjects)
    {
        if (StudentisedBootstrap.OfRoot(subjects, aboutMean: true) is not { } drawn)
        {
            return null;
        }

        // The bootstrap speaks of the divisor n.
        var count = SubjectSums.Total(subjects).Count;
        var scale = Math.Sqrt(count / (count - 1));
        var parts = VarianceParts.Of(subjects);
        return new(scale * drawn.Low, Math.Max(scale * drawn.High, UpperEnd(parts.Total, parts.OfTotal)));
    }

    private static double UpperEnd(double square, double ofSquare)
    {
        var degreesOfFreedom = 2 * square * square / ofSquare;
        return degreesOfFreedom is > 0 and < MostFreedom
            ? Math.Sqrt(square * degreesOfFreedom / ChiSquare.Quantile(Tail, degreesOfFreedom))
            : 0;
    }
}
