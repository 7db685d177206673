namespace PulseStream.Readings;

/// <summary>The pulse rate of several seconds as a whole number.</summary>
internal static class WholeRate
{
    /// <summary>Median of the rates there are, rounded; null where there is none.</summary>
    public static int? MedianOf(IReadOnlyList<UsableSecond> seconds) =>
        MedianOf(seconds.Where(s => s.PulseRatePerMinute is not null).Select(s => s.PulseRatePerMinute!.Value));

    /// <summary>Median of rates, rounded; null where there is none.</summary>
    public static int? MedianOf(IEnumerable<double> rates)
    {
        var sorted = rates.Order().ToArray();
        return sorted.Length == 0
            ? null
            : (int)Math.Round(0.5 * (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]), MidpointRounding.AwayFromZero);
    }
}
