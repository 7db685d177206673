namespace PulseStream.Signal;

/// <summary>Rate and regularity of the beats of the averaging window, which always ends with the second that is told.</summary>
/// <param name="RatePerMinute">Mean rate, 1/min; NaN with fewer than four beats.</param>
/// <param name="RateSpreadPerMinute">What an equally fair way of counting the same window may differ by from it, either way, 1/min.</param>
/// <param name="Irregularity">Root mean square of the differences of successive intervals over the mean interval; 0 with fewer than three intervals.</param>
/// <param name="MedianIntervalSeconds">Median interval, s; NaN without any.</param>
/// <param name="ShortIntervalSeconds">Lower quartile of the intervals, s; NaN with fewer than four beats and across gaps.</param>
/// <remarks>
/// Two countings of a window differ where the rhythm is irregular: beats over the time from the first to the last of them,
/// and beats with the parts of intervals that its two ends cut off over the whole window. The middle of both is told and
/// half their difference with it. Irregularity is the root mean square of successive differences (Task Force, Eur Heart J
/// 1996;17:354), over the mean so that it has no unit.
/// </remarks>
internal readonly record struct Rhythm(double RatePerMinute, double RateSpreadPerMinute, double Irregularity, double MedianIntervalSeconds, double ShortIntervalSeconds)
{
    /// <summary>Breathing alone stays below this irregularity; above it a beat may be late, or early, by more than is unseen.</summary>
    public const double LateAbove = 0.12;

    // Twice the usual interval where a beat was missed: so much longer than the shorter half of them, and as long as two others
    // to within breathing. An irregular heart's intervals of ±40 % fit both by chance now and then.
    private const double HidingShare = 1.87;
    private const double SameIntervalShare = 0.04;

    // In a rhythm that keeps time most pairs of intervals are as long as that pause; in one that keeps none, one of them by chance.
    private const double SamePairsShare = 0.4;

    // In two, a weak early beat between each two full ones would not be missed.
    private const int FewestIntervals = 3;

    // Beats seen over less of the window than this speak for little of it.
    private const double LeastSeenShare = 0.5;

    private static Rhythm Unknown => new(double.NaN, double.NaN, 0, double.NaN, double.NaN);

    /// <summary>Reads the rhythm off rising beat times.</summary>
    /// <param name="train">Steepest rises, bins; those before the window too.</param>
    /// <param name="window">The averaging window.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="irregularitySoFar">Irregularity of the second before, which stands where there are too few intervals to tell.</param>
    public static Rhythm Of(ReadOnlySpan<double> train, in RateWindow window, double binRateHz, double irregularitySoFar)
    {
        var first = FirstFrom(train, window.From);
        var beats = train[first..];
        if (beats.Length < 2)
        {
            return Unknown;
        }

        var intervals = beats.Length - 1;
        Span<double> sorted = stackalloc double[intervals];
        SortIntervals(beats, sorted);
        var median = Quantile(sorted, 0.5);
        var mean = (beats[^1] - beats[0]) / intervals;
        var byBeats = 60 * binRateHz / mean;
        if (intervals < FewestIntervals)
        {
            return Unknown with { Irregularity = irregularitySoFar, MedianIntervalSeconds = median / binRateHz };
        }

        var irregularity = Irregular(beats, mean);
        var byTime = 60 * binRateHz / IntervalByTime(train, first, mean, irregularity < LateAbove, window);
        var unseen = irregularity * byBeats * window.UnseenShare;
        var missed = MayHideABeat(beats, sorted) ? byBeats / intervals : 0;
        return new(0.5 * (byBeats + byTime), (0.5 * Math.Abs(byBeats - byTime)) + unseen + missed, irregularity, median / binRateHz, Quantile(sorted, 0.25) / binRateHz);
    }

    /// <summary>The same where samples are missing: the rate of the beats that were seen, with as many between them as fit in.</summary>
    /// <param name="train">Steepest rises, bins; those before the window too.</param>
    /// <param name="window">The averaging window.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="gaps">Where samples are missing.</param>
    /// <param name="periodBins">With what the window repeats, bins; NaN where it does not.</param>
    public static Rhythm AcrossGaps(ReadOnlySpan<double> train, in RateWindow window, double binRateHz, BridgedGaps gaps, double periodBins)
    {
        var beats = train[FirstFrom(train, window.From)..];
        if (beats.Length < 2)
        {
            return Unknown;
        }

        var mean = BeatsAcrossGaps.MeanInterval(beats, gaps, periodBins, LeastSeenShare * (window.End - window.From));
        Span<double> sorted = stackalloc double[beats.Length - 1];
        SortIntervals(beats, sorted);
        return Unknown with { RatePerMinute = 60 * binRateHz / mean, RateSpreadPerMinute = 0, MedianIntervalSeconds = Quantile(sorted, 0.5) / binRateHz };
    }

    private static int FirstFrom(ReadOnlySpan<double> train, double from)
    {
        var first = 0;
        while (first < train.Length && train[first] < from)
        {
            first++;
        }

        return first;
    }

    // Whole intervals and the parts that the window's ends cut off, over the time they take. A regular heart's overdue beat is
    // there and has not been found: that time is left out. An irregular one's is no more than due.
    private static double IntervalByTime(ReadOnlySpan<double> train, int first, double mean, bool isRegular, in RateWindow window)
    {
        var last = train[^1];
        var due = Math.Min(window.End, last + mean + window.End - window.SeenTo);
        var end = isRegular ? due : window.End;
        var count = train.Length - 1 - first + ((due - last) / mean);
        if (first == 0 || train[first - 1] < window.SoundFrom)
        {
            return (end - train[first]) / count;
        }

        var head = (train[first] - window.From) / (train[first] - train[first - 1]);
        return (end - window.From) / (count + head);
    }

    private static double Irregular(ReadOnlySpan<double> beats, double mean)
    {
        var sum = 0.0;
        for (var k = 2; k < beats.Length; k++)
        {
            var difference = beats[k] - (2 * beats[k - 1]) + beats[k - 2];
            sum += difference * difference;
        }

        return Math.Sqrt(sum / (beats.Length - 2)) / mean;
    }

    // An interval as long as others are two by two: a pause, or an early beat in it was too weak to be found.
    private static bool MayHideABeat(ReadOnlySpan<double> beats, ReadOnlySpan<double> sorted)
    {
        var longest = 1;
        for (var k = 2; k < beats.Length; k++)
        {
            longest = beats[k] - beats[k - 1] > beats[longest] - beats[longest - 1] ? k : longest;
        }

        var interval = beats[longest] - beats[longest - 1];
        int pairs = 0, same = 0;
        for (var k = 2; k < beats.Length; k++)
        {
            if (k < longest || k - 2 >= longest)
            {
                pairs++;
                same += Math.Abs(beats[k] - beats[k - 2] - interval) < SameIntervalShare * interval ? 1 : 0;
            }
        }

        return same > 0 && same >= SamePairsShare * pairs && interval > HidingShare * ShorterMean(sorted);
    }

    private static double ShorterMean(ReadOnlySpan<double> sorted)
    {
        double sum = 0;
        foreach (var interval in sorted[..((sorted.Length + 1) / 2)])
        {
            sum += interval;
        }

        return sum / ((sorted.Length + 1) / 2);
    }

    private static void SortIntervals(ReadOnlySpan<double> beats, Span<double> sorted)
    {
        for (var k = 0; k < sorted.Length; k++)
        {
            sorted[k] = beats[k + 1] - beats[k];
        }

        sorted.Sort();
    }

    private static double Quantile(ReadOnlySpan<double> sorted, double share)
    {
        var place = share * (sorted.Length - 1);
        return 0.5 * (sorted[(int)Math.Floor(place)] + sorted[(int)Math.Ceiling(place)]);
    }
}
