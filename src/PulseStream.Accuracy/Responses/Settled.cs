namespace PulseStream.Accuracy.Responses;

/// <summary>A stretch in which a course stays where it is.</summary>
/// <param name="From">Index of its first value.</param>
/// <param name="To">Index past its last value.</param>
/// <param name="Level">Median.</param>
internal readonly record struct Settled(int From, int To, double Level)
{
    private const double LeastSeconds = 10;

    // Noise of a normal kind stays within so many deviations for a minute or two.
    private const double NoiseReach = 5;

    // Median of absolute normal deviates, and a difference of two values scatters √2 as much as one.
    private const double MedianOfNormal = 0.6745;

    /// <summary>The stretches of a course, in order; a drift is a row of them, each near the one before.</summary>
    /// <param name="times">Seconds.</param>
    /// <param name="values">Values.</param>
    /// <param name="spread">What a settled display may still do, largest less smallest.</param>
    public static IReadOnlyList<Settled> Of(double[] times, double[] values, double spread)
    {
        var reach = Math.Max(spread, NoiseReach * NoiseOf(values));
        var found = new List<Settled>();
        var from = 0;
        while (from < values.Length)
        {
            var to = EndOf(values, from, reach);
            if (times[to - 1] - times[from] < LeastSeconds)
            {
                from++;
                continue;
            }

            found.Add(new(from, to, MedianOf(values.AsSpan(from, to - from))));
            from = to;
        }

        return found;
    }

    internal static double MedianOf(ReadOnlySpan<double> values)
    {
        var sorted = values.ToArray();
        Array.Sort(sorted);
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }

    private static int EndOf(double[] values, int from, double reach)
    {
        var (low, high, to) = (values[from], values[from], from + 1);
        while (to < values.Length && Math.Max(high, values[to]) - Math.Min(low, values[to]) <= reach)
        {
            (low, high) = (Math.Min(low, values[to]), Math.Max(high, values[to]));
            to++;
        }

        return to;
    }

    private static double NoiseOf(double[] values)
    {
        var jumps = values.Skip(1).Zip(values, (after, before) => Math.Abs(after - before)).ToArray();
        return jumps.Length == 0 ? 0 : MedianOf(jumps) / MedianOfNormal / Math.Sqrt(2);
    }
}
