namespace PulseStream.Signal;

/// <summary>
/// Whether the weaker front of each pair keeps to its time behind the full one while the intervals change. The aortic valve
/// closes, and the arteries throw a wave back, after a time that hardly depends on the interval that follows: ejection takes
/// 1.7 ms less for each beat a minute more (Weissler, Harris, Schoenfeld, Circulation 1968;37:149). A heart's early beat
/// follows after a share of an interval that breathing changes, or scatters by itself.
/// </summary>
/// <remarks>The few pairs of one window keep to anything by chance; the variances of half a minute's do not.</remarks>
internal sealed class DelayCourse
{
    // As many windows as hold three times eight seconds between them; before half of those are there nothing is said.
    private const int KeptWindows = 16;
    private const int LeastWindows = 8;

    // Of a beat that comes early by a quarter at least, breathing moves the delay by a quarter and more of what it moves the pair by; what
    // moves by less keeps its time.
    private const double MostOfIntervals = 0.25;

    // Early beats of a ventricle may keep theirs as well ("fixed coupling", common practice), but to no better than one to three hundredths
    // of a second, and their fronts scatter besides.
    private const double MostSpreadSeconds = 0.01;

    // Intervals that stay as they are to within the sampling and the noise tell nothing.
    private const double LeastIntervalSpreadSeconds = 0.015;

    // The middle of two waves or beats that are the same ones, and of their period.
    private const double SameDelaySeconds = 0.06;
    private const double SamePeriodShare = 0.3;

    // Sooner or later in a period than second waves and early beats.
    private const double SoonestShare = 0.2;
    private const double LatestShare = 0.47;

    // Second waves steeper than this, or so much later than the latest of Weissler's, are rare enough for a steady heart to be as likely.
    private const double SteepestShare = 0.4;
    private const double LaterSeconds = 0.03;

    // Every second beat early at 150 a minute: nothing that is faster is asked here.
    private const double ShortestPeriodSeconds = 0.8;
    // To doubt takes less than to be sure. Where a wave is no more than a ripple, or from lower down, noise moves it as far; and what moves it further is noise.
    private const int LeastScatteredWindows = 4;
    private const double LeastScatteredShare = 0.13;
    private const double LeastScatteredFootShare = 0.6;
    private const double LeastScatterSeconds = 0.02;
    private const double MostScatterSeconds = 0.05;
    private const double ScatterOfIntervals = 0.75;
    private double delayVariance;
    private double intervalVariance;
    private double delay;
    private double period;
    private int windows;

    /// <summary>Forgets all.</summary>
    public void Restart() => windows = 0;

    /// <summary>Takes the pairs of the newest window; those of another delay or period begin anew.</summary>
    /// <param name="pairs">The pairs; their spreads are 0 where there are none, or too few.</param>
    public void Take(in RisePairs pairs)
    {
        if (!(pairs.IntervalSpreadSeconds > 0 && pairs.DelayShare > SoonestShare && pairs.DelayShare < LatestShare))
        {
            return;
        }

        windows = IsSame(pairs) ? Math.Min(windows + 1, KeptWindows) : 1;
        delay += (pairs.DelaySeconds - delay) / windows;
        period += (pairs.PeriodSeconds - period) / windows;
        delayVariance += ((pairs.DelaySpreadSeconds * pairs.DelaySpreadSeconds) - delayVariance) / windows;
        intervalVariance += ((pairs.IntervalSpreadSeconds * pairs.IntervalSpreadSeconds) - intervalVariance) / windows;
    }

    /// <summary>Whether pairs of a window are full beats with the second waves that have kept their time so far.</summary>
    /// <param name="pairs">The pairs.</param>
    public bool KeepTime(in RisePairs pairs) =>
        windows >= LeastWindows
        && delayVariance < Math.Min(MostSpreadSeconds * MostSpreadSeconds, MostOfIntervals * MostOfIntervals * intervalVariance)
        && intervalVariance > LeastIntervalSpreadSeconds * LeastIntervalSpreadSeconds
        && IsSame(pairs)
        && pairs.PeriodSeconds > ShortestPeriodSeconds
        && pairs.DelayShare > SoonestShare
        && pairs.DelayShare < LatestShare
        && pairs.SlopeShare < SteepestShare
        && pairs.DelaySeconds < ValveClosure.LatestWaveSeconds(pairs.PeriodSeconds) + LaterSeconds;

    /// <summary>Whether weaker fronts that rise from near the crest scatter as far behind the full ones as those do: a second wave keeps its time, or its share of the interval; the early beats of a heart need not.</summary>
    /// <param name="pairs">Pairs of a window.</param>
    public bool Scatter(in RisePairs pairs) =>
        windows >= LeastScatteredWindows
        && IsSame(pairs)
        && pairs.SlopeShare >= LeastScatteredShare
        && pairs.FootShare > LeastScatteredFootShare
        && delayVariance > LeastScatterSeconds * LeastScatterSeconds
        && delayVariance < MostScatterSeconds * MostScatterSeconds
        && delayVariance > ScatterOfIntervals * ScatterOfIntervals * intervalVariance;

    private bool IsSame(in RisePairs pairs) =>
        windows > 0
        && Math.Abs(pairs.DelaySeconds - delay) < SameDelaySeconds
        && Math.Abs(pairs.PeriodSeconds - period) < SamePeriodShare * period;
}
