namespace PulseStream.Readings;

/// <summary>The pulse rate of several seconds as a whole number.</summary>
internal static class WholeRate
{
    // Five seconds make a reading by default; more than these are rare enough to be given room of their own.
    private const int FewSeconds = 64;

    /// <summary>Median of the rates there are, rounded; null where fewer than half of the seconds have one: a lone rate among doubts is as doubtful.</summary>
    public static int? MedianOf(ReadOnlySpan<UsableSecond> seconds)
    {
        Span<double> rates = seconds.Length <= FewSeconds ? stackalloc double[FewSeconds] : new double[seconds.Length];
        var count = 0;
        foreach (ref readonly var second in seconds)
        {
            if (second.PulseRatePerMinute is { } rate)
            {
                rates[count++] = rate;
            }
        }

        rates = rates[..count];
        rates.Sort();
        return 2 * count < seconds.Length ? null : Rounded(0.5 * (rates[(count - 1) / 2] + rates[count / 2]));
    }

    /// <summary>A rate as it is shown.</summary>
    public static int Rounded(double rate) => (int)Math.Round(rate, MidpointRounding.AwayFromZero);
}
