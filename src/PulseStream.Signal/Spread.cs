namespace PulseStream.Signal;

/// <summary>Mean, standard deviation and median of a few values.</summary>
internal static class Spread
{
    /// <summary>Both; the deviation is that of a sample.</summary>
    /// <param name="values">Two at least.</param>
    public static (double Mean, double Deviation) Of(ReadOnlySpan<double> values)
    {
        var mean = 0.0;
        foreach (var value in values)
        {
            mean += value / values.Length;
        }

        var sum = 0.0;
        foreach (var value in values)
        {
            sum += (value - mean) * (value - mean);
        }

        return (mean, Math.Sqrt(sum / (values.Length - 1)));
    }

    /// <summary>The median, of an even number the lower one of the two in the middle; sorts the values.</summary>
    /// <param name="values">One at least.</param>
    public static double MedianOf(Span<double> values)
    {
        values.Sort();
        return values[(values.Length - 1) / 2];
    }
}
