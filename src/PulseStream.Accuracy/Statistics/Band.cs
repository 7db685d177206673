namespace PulseStream.Accuracy.Statistics;

/// <summary>The pairs whose reference lies in a band.</summary>
/// <param name="From">Lower edge, in the band.</param>
/// <param name="To">Upper edge, in the band only where it is the top of the scale.</param>
/// <param name="Measures">Of these pairs.</param>
/// <param name="ArmsInterval">Interval of A_rms; null where one subject is in the band.</param>
public sealed record Band(double From, double To, Measures Measures, ConfidenceInterval? ArmsInterval)
{
    /// <summary>The bands that hold a pair, from low to high.</summary>
    /// <param name="pairs">The pairs.</param>
    /// <param name="scale">Tells how wide a band is.</param>
    public static IReadOnlyList<Band> Of(IEnumerable<PairedReading> pairs, QuantityScale scale)
    {
        ArgumentNullException.ThrowIfNull(scale);
        return
        [
            .. pairs.GroupBy(pair => LowerEdge(pair.Reference, scale))
                .OrderBy(band => band.Key)
                .Select(band => Of(band.Key, band.Key + scale.BandWidth, [.. band])),
        ];
    }

    private static Band Of(double from, double to, PairedReading[] pairs) =>
        new(from, to, Measures.Of(pairs), RootInterval.OfArms(SubjectSums.Of(pairs)));

    // A reference of 100 % belongs to the decade below it: there is none above.
    private static double LowerEdge(double reference, QuantityScale scale) =>
        Math.Min(Math.Floor(reference / scale.BandWidth) * scale.BandWidth, scale.Highest - scale.BandWidth);
}
