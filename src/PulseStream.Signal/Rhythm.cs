namespace PulseStream.Signal;

/// <summary>Rate and regularity of the beats of a window.</summary>
/// <param name="RatePerMinute">Mean rate between the first and the last beat, 1/min; NaN with fewer than three beats.</param>
/// <param name="Irregularity">Root mean square of the differences of successive intervals over the mean interval; 0 with fewer than three intervals.</param>
/// <param name="MedianIntervalSeconds">Median interval, s; NaN without any.</param>
internal readonly record struct Rhythm(double RatePerMinute, double Irregularity, double MedianIntervalSeconds)
{
    /// <summary>Reads the rhythm off rising beat times.</summary>
    /// <param name="beats">Steepest rises, bins.</param>
    /// <param name="binRateHz">Bins a second.</param>
    public static Rhythm Of(ReadOnlySpan<double> beats, double binRateHz)
    {
        var intervals = beats.Length - 1;
        if (intervals < 1)
        {
            return new(double.NaN, 0, double.NaN);
        }

        var mean = (beats[^1] - beats[0]) / intervals;
        var rate = intervals < 2 ? double.NaN : 60 * binRateHz / mean;
        return new(rate, Irregular(beats, mean), Median(beats) / binRateHz);
    }

    private static double Irregular(ReadOnlySpan<double> beats, double mean)
    {
        if (beats.Length < 4)
        {
            return 0;
        }

        var sum = 0.0;
        for (var k = 2; k < beats.Length; k++)
        {
            var difference = beats[k] - (2 * beats[k - 1]) + beats[k - 2];
            sum += difference * difference;
        }

        return Math.Sqrt(sum / (beats.Length - 2)) / mean;
    }

    private static double Median(ReadOnlySpan<double> beats)
    {
        Span<double> intervals = stackalloc double[64];
        intervals = intervals[..(beats.Length - 1)];
        for (var k = 0; k < intervals.Length; k++)
        {
            intervals[k] = beats[k + 1] - beats[k];
        }

        intervals.Sort();
        return 0.5 * (intervals[(intervals.Length - 1) / 2] + intervals[intervals.Length / 2]);
    }
}
