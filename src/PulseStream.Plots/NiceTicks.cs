namespace PulseStream.Plots;

/// <summary>Round numbers for an axis.</summary>
internal static class NiceTicks
{
    private static readonly double[] Decades = [1, 2, 5, 10];

    // Whole minutes and hours where seconds grow many.
    private static readonly double[] TimeSteps = [0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 30, 60, 120, 300, 600, 1200, 1800, 3600, 7200, 14400, 43200];

    /// <summary>Multiples of 1, 2 or 5 times a power of ten within [low, high].</summary>
    /// <param name="low">Lower end.</param>
    /// <param name="high">Upper end, above the lower.</param>
    /// <param name="atMost">How many steps at most, 1 or more.</param>
    public static double[] Between(double low, double high, int atMost)
    {
        var roughStep = (high - low) / atMost;
        var decade = Math.Pow(10, Math.Floor(Math.Log10(roughStep)));
        return Multiples(Decades.First(d => d * decade >= roughStep * 0.999999) * decade, low, high);
    }

    /// <summary>Times from 0 to an end, seconds.</summary>
    /// <param name="end">Above 0.</param>
    /// <param name="atMost">How many steps at most, 1 or more.</param>
    public static double[] Times(double end, int atMost) =>
        TimeSteps.FirstOrDefault(step => end / step <= atMost) is > 0 and var step ? Multiples(step, 0, end) : Between(0, end, atMost);

    private static double[] Multiples(double step, double low, double high)
    {
        var first = (long)Math.Ceiling((low / step) - 1e-9);
        var last = (long)Math.Floor((high / step) + 1e-9);
        return [.. Enumerable.Range(0, (int)Math.Max(0, last - first + 1)).Select(i => Math.Round((first + i) * step, 9))];
    }
}
