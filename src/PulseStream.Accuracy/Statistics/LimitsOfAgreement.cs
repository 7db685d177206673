namespace PulseStream.Accuracy.Statistics;

/// <summary>
/// 95 % limits of agreement of repeated measurements whose true value varies: scatter within subjects and of subjects
/// against each other, told apart by a one-way analysis of variance of the errors.
/// </summary>
/// <remarks>
/// J. M. Bland, D. G. Altman, J Biopharm Stat 2007;17:571-582, section 3; with one pair a subject the limits of Lancet
/// 1986;327:307-310. Intervals by the same authors' standard error (Stat Methods Med Res 1999;8:135-160, section 2), with
/// the analysis of variance in place of s.
/// </remarks>
/// <param name="Low">Bias − 1.96 standard deviations.</param>
/// <param name="High">Bias + 1.96 standard deviations.</param>
/// <param name="LowInterval">Interval of the lower limit.</param>
/// <param name="HighInterval">Interval of the upper limit.</param>
/// <param name="WithinVariance">Variance of the error within a subject; null where no subject has two pairs.</param>
/// <param name="BetweenVariance">Variance of subjects' own biases; null likewise.</param>
/// <param name="TotalVariance">Of the error of one reading of any subject.</param>
public sealed record LimitsOfAgreement(
    double Low, double High, ConfidenceInterval LowInterval, ConfidenceInterval HighInterval, double? WithinVariance, double? BetweenVariance, double TotalVariance)
{
    private const double NormalQuantile = 1.96;

    /// <summary>The limits of a study.</summary>
    /// <param name="pairs">Of two or more subjects.</param>
    /// <returns>Null where there are fewer than two subjects.</returns>
    public static LimitsOfAgreement? Of(IEnumerable<PairedReading> pairs)
    {
        var subjects = SubjectSums.Of(pairs);
        if (subjects.Length < 2)
        {
            return null;
        }

        var error = MeanError.Of(subjects);
        var (within, between, total, uncertainty) = VariancesOf(subjects, error.Bias);
        var deviation = Math.Sqrt(total);
        var ofDeviation = total > 0 ? uncertainty / (4 * total) : 0;
        var half = StudentT.TwoSided95(subjects.Length - 1)
            * Math.Sqrt(error.Variance!.Value + (NormalQuantile * NormalQuantile * ofDeviation));
        var low = error.Bias - (NormalQuantile * deviation);
        var high = error.Bias + (NormalQuantile * deviation);
        return new(low, high, ConfidenceInterval.Around(low, half), ConfidenceInterval.Around(high, half), within, between, total);
    }

    // The last value is the variance of the total variance.
    private static (double? Within, double? Between, double Total, double Uncertainty) VariancesOf(SubjectSums[] subjects, double bias)
    {
        var all = SubjectSums.Total(subjects);
        var amongSquares = subjects.Sum(s => s.Count * Math.Pow((s.Sum / s.Count) - bias, 2));
        var among = amongSquares / (subjects.Length - 1);
        var spare = all.Count - subjects.Length;
        if (spare < 1)
        {
            return (null, null, among, 2 * among * among / (subjects.Length - 1));
        }

        var within = subjects.Sum(s => Math.Max(0, s.SquareSum - (s.Sum * s.Sum / s.Count))) / spare;
        var size = ((all.Count * all.Count) - subjects.Sum(s => s.Count * s.Count)) / ((subjects.Length - 1) * all.Count);
        var between = Math.Max(0, (among - within) / size);
        var ofWithin = 2 * within * within / spare;
        return between > 0
            ? (within, between, between + within, (2 * Math.Pow(among / size, 2) / (subjects.Length - 1)) + (Math.Pow(1 - (1 / size), 2) * ofWithin))
            : (within, 0, within, ofWithin);
    }
}
