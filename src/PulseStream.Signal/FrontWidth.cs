namespace PulseStream.Signal;

/// <summary>How long a rise of blood volume is steep: full width at half of its steepest slope.</summary>
/// <remarks>
/// A crest that stays up, because the next wave follows before it falls, makes a front look longer than it is; its width does
/// not know the crest.
/// </remarks>
internal static class FrontWidth
{
    private const double HalfShare = 0.5;

    /// <summary>The width, bins; 0 before the window's start.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rise">Bin of the steepest rise.</param>
    public static double BinsOf(ReadOnlySpan<double> slopes, double rise)
    {
        if (!(rise >= 0))
        {
            return 0;
        }

        var at = (int)rise;
        var half = HalfShare * slopes[at];
        var from = at;
        while (from > 0 && slopes[from] > half)
        {
            from--;
        }

        var to = at;
        while (to < slopes.Length - 1 && slopes[to] > half)
        {
            to++;
        }

        return to - from - PartBelow(slopes, from, from + 1, half) - PartBelow(slopes, to, to - 1, half);
    }

    // From a bin below the half towards the neighbour above it, as a share of a bin.
    private static double PartBelow(ReadOnlySpan<double> slopes, int below, int above, double half)
    {
        var isCrossed = slopes[below] < half && above >= 0 && above < slopes.Length && slopes[above] > half;
        return isCrossed ? (half - slopes[below]) / (slopes[above] - slopes[below]) : 0;
    }
}
