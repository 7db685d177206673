namespace PulseStream.Signal;

/// <summary>How steep the rises of a window are, each beside what is normal in the seconds about it.</summary>
/// <param name="nearBins">Bins that these seconds have.</param>
internal sealed class RiseSteepness(double nearBins)
{
    private const int MostRises = 64;
    private readonly double[] own = new double[MostRises];
    private readonly double[] normal = new double[MostRises];

    /// <summary>Steepness of a rise, by its number.</summary>
    public double Of(int k) => own[k];

    /// <summary>The second steepest of the rises near it, or its own where it is alone.</summary>
    public double NormalAbout(int k) => normal[k];

    /// <summary>Measures the rises of a window.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order.</param>
    public void Find(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises)
    {
        int first = 0, end = 0;
        for (var k = 0; k < rises.Length; k++)
        {
            var from = Math.Max(0, Math.Min(rises[k] - (nearBins / 2), slopes.Length - nearBins));
            var (firstBefore, endBefore) = (first, end);
            while (rises[first] < from)
            {
                first++;
            }

            for (; end < rises.Length && rises[end] <= from + nearBins; end++)
            {
                own[end] = slopes[(int)rises[end]];
            }

            // Neighbours mostly have the same ones about them.
            normal[k] = k > 0 && first == firstBefore && end == endBefore ? normal[k - 1] : SecondSteepest(own.AsSpan(first, end - first));
        }
    }

    private static double SecondSteepest(ReadOnlySpan<double> some)
    {
        double first = 0, second = 0;
        foreach (var slope in some)
        {
            second = Math.Max(second, Math.Min(first, slope));
            first = Math.Max(first, slope);
        }

        return second > 0 ? second : first;
    }
}
