namespace PulseStream.Accuracy.Calibration;

/// <summary>What a degree promises for people who were not among the pairs: each subject judged by the others' curve.</summary>
/// <param name="Degree">Degree of the polynomial.</param>
/// <param name="Arms">Root mean square error over the pairs that are no outliers.</param>
/// <param name="ArmsOfAll">The same over all pairs, outliers too.</param>
/// <param name="SubjectSquares">Sum of squared errors of each subject, by name, outliers left out.</param>
/// <param name="Errors">Error of each pair, in their order.</param>
public sealed record UnseenSubjects(int Degree, double Arms, double ArmsOfAll, IReadOnlyList<double> SubjectSquares, IReadOnlyList<double> Errors)
{
    // Below any reference's resolution: points that lie on a curve exactly are not told apart by rounding.
    private const double LeastGain = 1e-6;

    // What gains less is not worth a power that bends most where there are the fewest pairs, at the ends of the range.
    private const double LeastShare = 0.03;

    /// <summary>Tries a degree.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="isKept">Which of them are no outliers.</param>
    /// <param name="degree">1 or more.</param>
    /// <returns>Null where the others do not tell the curve.</returns>
    internal static UnseenSubjects? Of(IReadOnlyList<RatioPair> pairs, bool[] isKept, int degree)
    {
        var curves = new Dictionary<string, double[]>(StringComparer.Ordinal);
        foreach (var subject in pairs.Select(pair => pair.Subject).Distinct(StringComparer.Ordinal))
        {
            RatioPair[] others = [.. pairs.Where(pair => pair.Subject != subject)];
            if (RobustFit.Of(others, degree) is not { } fit)
            {
                return null;
            }

            curves[subject] = fit.Coefficients;
        }

        double[] errors = [.. pairs.Select(pair => FallingPolynomial.At(curves[pair.Subject], pair.Ratio) - pair.Reference)];
        double[] bySubject =
        [
            .. pairs.Select((pair, i) => (pair.Subject, Square: isKept[i] ? errors[i] * errors[i] : 0))
                .GroupBy(pair => pair.Subject, StringComparer.Ordinal)
                .OrderBy(subject => subject.Key, StringComparer.Ordinal)
                .Select(subject => subject.Sum(pair => pair.Square)),
        ];
        return new(degree, Math.Sqrt(bySubject.Sum() / isKept.Count(kept => kept)), Math.Sqrt(errors.Average(error => error * error)), bySubject, errors);
    }

    /// <summary>Whether its gain over another degree is worth it, and more than a standard error of that gain, subject by subject.</summary>
    internal bool IsClearlyBetterThan(UnseenSubjects other)
    {
        double[] gains = [.. other.SubjectSquares.Zip(SubjectSquares, (theirs, ours) => theirs - ours)];
        var mean = gains.Average();
        var error = Math.Sqrt(gains.Sum(gain => Math.Pow(gain - mean, 2)) / (gains.Length * (gains.Length - 1)));
        return other.Arms - Arms > Math.Max(LeastGain, LeastShare * other.Arms) && mean > error;
    }
}
