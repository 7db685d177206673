namespace PulseStream.Signal;

/// <summary>
/// Counts beats where samples are missing: between the beats that were seen whole, as many lie in a gap as the interval seen
/// elsewhere fits in. Where it does not fit, nobody can tell how many there were.
/// </summary>
internal static class BeatsAcrossGaps
{
    // Whole intervals seen in a row that are enough to know the usual one by.
    private const int LeastWhole = 3;

    // A sound rhythm's intervals fit to within breathing, also where there are several in a gap.
    private const double FitTolerance = 0.25;

    /// <summary>Mean interval of the beats, bins; NaN where their number is not sure.</summary>
    /// <param name="beats">Steepest rises, bins.</param>
    /// <param name="gaps">Where samples are missing.</param>
    /// <param name="periodBins">With what the window repeats, bins; NaN where it does not.</param>
    /// <param name="leastBins">What the beats have to reach over at least, bins.</param>
    public static double MeanInterval(ReadOnlySpan<double> beats, BridgedGaps gaps, double periodBins, double leastBins)
    {
        Span<double> seen = stackalloc double[beats.Length];
        var count = 0;
        foreach (var beat in beats)
        {
            if (!gaps.BendAt(beat))
            {
                seen[count++] = beat;
            }
        }

        seen = seen[..count];
        if (count < 2 || seen[^1] - seen[0] < leastBins)
        {
            return double.NaN;
        }

        var rough = Intervals(seen, gaps, Usual(seen, gaps, periodBins), out _);
        var mean = (seen[^1] - seen[0]) / rough;
        var intervals = Intervals(seen, gaps, mean, out var doFit);
        return doFit && intervals > 1 ? (seen[^1] - seen[0]) / intervals : double.NaN;
    }

    private static double Usual(ReadOnlySpan<double> seen, BridgedGaps gaps, double periodBins)
    {
        Span<double> whole = stackalloc double[seen.Length];
        var count = 0;
        for (var k = 1; k < seen.Length; k++)
        {
            if (!gaps.AnyBetween(seen[k - 1], seen[k]))
            {
                whole[count++] = seen[k] - seen[k - 1];
            }
        }

        whole = whole[..count];
        whole.Sort();
        return count >= LeastWhole ? whole[count / 2] : periodBins;
    }

    private static double Intervals(ReadOnlySpan<double> seen, BridgedGaps gaps, double usual, out bool doFit)
    {
        var sum = 0.0;
        doFit = true;
        for (var k = 1; k < seen.Length; k++)
        {
            var share = (seen[k] - seen[k - 1]) / usual;
            var isWhole = !gaps.AnyBetween(seen[k - 1], seen[k]);
            var held = isWhole ? 1 : Math.Max(1, Math.Round(share));
            doFit &= isWhole || Math.Abs(share - held) <= FitTolerance;
            sum += held;
        }

        return sum;
    }
}
