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
        var (within, between, total, ofTotal) = VarianceParts.Of(subjects);
        var deviation = Math.Sqrt(total);
        var ofDeviation = total > 0 ? ofTotal / (4 * total) : 0;
        var half = StudentT.TwoSided95(subjects.Length - 1)
            * Math.Sqrt(error.Variance!.Value + (NormalQuantile * NormalQuantile * ofDeviation));
        var low = error.Bias - (NormalQuantile * deviation);
        var high = error.Bias + (NormalQuantile * deviation);
        return new(low, high, ConfidenceInterval.Around(low, half), ConfidenceInterval.Around(high, half), within, between, total);
    }
}
