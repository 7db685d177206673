namespace PulseStream.Signal;

/// <summary>Rate and regularity of the beats of a window.</summary>
/// <param name="RatePerMinute">Mean rate between the first and the last beat, 1/min; NaN with fewer than three beats.</param>
/// <param name="Irregularity">Root mean square of the differences of successive intervals over the mean interval; 0 with fewer than three intervals.</param>
/// <param name="MedianIntervalSeconds">Median interval, s; NaN without any.</param>
internal readonly record struct Rhythm(double RatePerMinute, double Irregularity, double MedianIntervalSeconds)
{
    private const double HiddenBeatShare = 1.5;

    /// <summary>Reads the rhythm off rising beat times.</summary>
    /// <param name="beats">Steepest rises, bins.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="mayHideBeats">Whether a gap may hide beats: intervals half as long again as the median then do not count.</param>
    public static Rhythm Of(ReadOnlySpan<double> beats, double binRateHz, bool mayHideBeats)
    {
        if (beats.Length < 2)
        {
            return new(double.NaN, 0, double.NaN);
        }

        var median = Median(beats);
        var longest = mayHideBeats ? HiddenBeatShare * median : double.PositiveInfinity;
        double sum = 0;
        var count = 0;
        for (var k = 1; k < beats.Length; k++)
        {
            var interval = beats[k] - beats[k - 1];
            sum += interval <= longest ? interval : 0;
            count += interval <= longest ? 1 : 0;
        }

        var mean = sum / count;
        var rate = count < 2 ? double.NaN : 60 * binRateHz / mean;
        return new(rate, mayHideBeats ? 0 : Irregular(beats, mean), median / binRateHz);
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
