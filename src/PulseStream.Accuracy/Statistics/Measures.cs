namespace PulseStream.Accuracy.Statistics;

/// <summary>Bias, precision and A_rms of some pairs.</summary>
/// <remarks>
/// Error = reading − reference. A_rms = √(Σ error² / n), so that A_rms² = bias² + precision²·(n − 1)/n.
/// ISO 80601-2-61, 201.12.1.101.2.2.
/// </remarks>
/// <param name="Count">Pairs.</param>
/// <param name="Subjects">Subjects.</param>
/// <param name="Bias">Mean error; null where there is no pair.</param>
/// <param name="Precision">Standard deviation of the error, divisor n − 1; null where there is one pair or none.</param>
/// <param name="Arms">Root mean square error; null where there is no pair.</param>
public sealed record Measures(int Count, int Subjects, double? Bias, double? Precision, double? Arms)
{
    /// <summary>The measures of some pairs.</summary>
    /// <param name="pairs">Any number of them.</param>
    public static Measures Of(IReadOnlyCollection<PairedReading> pairs)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        if (pairs.Count == 0)
        {
            return new(0, 0, null, null, null);
        }

        var bias = pairs.Average(pair => pair.Error);
        var squares = pairs.Sum(pair => Math.Pow(pair.Error - bias, 2));
        return new(
            pairs.Count,
            pairs.Select(pair => pair.Subject).Distinct(StringComparer.Ordinal).Count(),
            bias,
            pairs.Count > 1 ? Math.Sqrt(squares / (pairs.Count - 1)) : null,
            Math.Sqrt(pairs.Sum(pair => pair.Error * pair.Error) / pairs.Count));
    }
}
