namespace PulseStream.Signal;

/// <summary>
/// Finds the beats of a window by the steepest rise of blood volume: the pulse's front is its fastest part. A rise counts
/// where none steeper lies within a quarter of the period that the window repeats with, so that a second wave is no beat
/// and an early beat is one.
/// </summary>
internal sealed class BeatFinder
{
    public const int MostBeats = 64;

    // A second wave comes within a quarter of the period behind the front; beats do not come within 0.18 s at 220 a minute,
    // and an early one may come 0.3 s behind another however long the period.
    private const double ReachShare = 0.25;
    private const double ShortestReachSeconds = 0.18;
    private const double LongestReachSeconds = 0.3;

    // A front with the fall behind it fills half a period.
    private const double NoiseWidthShare = 0.25;
    private const double NoiseReachShare = 0.6;

    // Two, and one more at either end of a window; three would be a faster wave counted by every third.
    private const double MostWavesOfBeat = 2.4;

    // A window that repeats this well knows its interval better than the seconds before it do.
    private const double GoodPeriodicity = 0.6;

    // At its ends a window bends towards the slow fit: what rises there is not measured, and a front may just be seen.
    private const double EdgeSeconds = 0.2;
    private const double NewestEdgeSeconds = 0.1;
    private readonly double binRateHz;
    private readonly int edge;
    private readonly Repetition repetition;
    private readonly WeakRises weak;
    private readonly PairJudge judge;
    private readonly SteepestRises steepest;
    private readonly double[] kept = new double[MostBeats];
    private readonly double[] seconds = new double[MostBeats];
    private int secondCount;
    private int allCount;

    public BeatFinder(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        edge = 1 + (int)(EdgeSeconds * binRateHz);
        UnseenBins = 1 + (int)(NewestEdgeSeconds * binRateHz);
        steepest = new(edge, UnseenBins);
        repetition = new(design);
        weak = new(design.BinRateHz);
        judge = new(repetition, design);
        Course = new(design.LongestWindowBins);
    }

    /// <summary>Blood volume and its slope in the window.</summary>
    public BloodCourse Course { get; }

    /// <summary>Places of the steepest rises in the window, in bins from its start, between bins.</summary>
    public ReadOnlySpan<double> Rises => kept.AsSpan(0, Count);

    /// <summary>How many beats were found.</summary>
    public int Count { get; private set; }

    /// <summary>The same with those at the newest edge, whose place and shape are not known well yet.</summary>
    public ReadOnlySpan<double> AllRises => kept.AsSpan(0, allCount);

    /// <summary>Bins at the newest end in which a beat does not show yet.</summary>
    public int UnseenBins { get; }

    /// <summary>Whether waves were dropped that may have been beats.</summary>
    public bool IsDoubtful => judge.IsDoubtful || (Pairs != PairKind.EarlyBeat && weak.IsDoubtful);

    /// <summary>Whether an early beat at the newest edge may have been dropped.</summary>
    public bool IsUndecided => weak.IsUndecided;

    /// <summary>The pairs with the window's own period; their spreads are 0 where there are none.</summary>
    public RisePairs FoundPairs => judge.Found;

    /// <summary>What comes behind each full front of the window, as far as it shows by itself.</summary>
    public PairKind OwnPairs => judge.Own;

    /// <summary>The same in the light of the windows before.</summary>
    public PairKind Pairs { get; private set; }

    /// <summary>Whether second waves come half a period behind the fronts, so that the window seems to repeat with both.</summary>
    public bool AreEven => judge.AreEven;

    /// <summary>Whether one second wave, and no more, comes behind each front.</summary>
    public bool HasSecondWaves { get; private set; }

    /// <summary>Whether each front has a second wave behind it without the window's repeating.</summary>
    public bool AreUneven => judge.AreUneven;

    /// <summary>The same, as far as the window shows it by itself.</summary>
    public bool AreSurelyUneven => judge.AreSurelyUneven;

    /// <summary>Whether what passes for second waves in this window may be beats, or the other way round.</summary>
    public bool AreAsLikelyBeats => judge.AreAsLikelyBeats;

    /// <summary>The period with which the window repeats, s; NaN where it does not.</summary>
    public double PeriodSeconds => judge.PeriodSeconds;

    /// <summary>Autocorrelation at that period, −1 to 1.</summary>
    public double Periodicity => judge.Periodicity;

    /// <summary>Autocorrelation at twice that period; 0 where it is not known.</summary>
    public double PeriodicityOfTwo => judge.PeriodicityOfTwo;

    /// <summary>Whether the window repeats so well that its period is its interval.</summary>
    public bool RepeatsWell => Periodicity >= GoodPeriodicity;

    /// <summary>The period where the window repeats well, else the interval so far, s; NaN where neither is known.</summary>
    public double UsualIntervalSeconds { get; private set; }

    /// <summary>Mean interval from the first to the last beat, s; NaN with fewer than two.</summary>
    public double IntervalSeconds => Count < 2 ? double.NaN : (kept[Count - 1] - kept[0]) / (Count - 1) / binRateHz;

    /// <summary>The beats with what comes in turn with them, where nobody can tell whether those are beats as well.</summary>
    /// <param name="rises">Room for them; their steepest rises, bins, in order.</param>
    /// <returns>How many there are; 0 where it can be told.</returns>
    public int CopyOfEither(Span<double> rises)
    {
        if (Pairs != PairKind.Either)
        {
            return 0;
        }

        AllRises.CopyTo(rises);
        return WithSeconds(rises);
    }

    /// <summary>Finds the beats of a window.</summary>
    /// <param name="lights">Infrared and red in turn, slow part removed; blood volume is minus infrared.</param>
    /// <param name="usualIntervalSeconds">Interval of the beats so far, s; NaN where unknown.</param>
    /// <param name="before">What was said of the windows before; null where nothing is known of them.</param>
    public void Find(ReadOnlySpan<double> lights, double usualIntervalSeconds, PairCourse? before = null)
    {
        Course.Take(lights);
        repetition.Find(Course.Volumes);
        judge.Restart();
        UsualIntervalSeconds = !RepeatsWell && usualIntervalSeconds > 0 ? usualIntervalSeconds : PeriodSeconds;
        var interval = double.IsNaN(UsualIntervalSeconds) ? 0 : UsualIntervalSeconds;
        FindSteepest(Math.Clamp(ReachShare * interval, ShortestReachSeconds, LongestReachSeconds));
        Pairs = judge.Judge(Course.Slopes[..^1], kept.AsSpan(0, allCount), RepeatsWell, before);
        UsualIntervalSeconds = judge.AreOfAnotherPeriod ? PeriodSeconds : UsualIntervalSeconds;
        Keep();
    }

    /// <summary>
    /// Finds the beats of a window again whose fronts drown in noise but which repeats: a quarter of a period before and
    /// after take the place of two neighbouring bins, and no two beats are closer than half a period.
    /// </summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <remarks>The difference of two means is the matched filter of a step in white noise (Canny, IEEE Trans Pattern Anal Mach Intell 1986;8:679).</remarks>
    public void FindInNoise(ReadOnlySpan<double> pairs)
    {
        var length = pairs.Length / 2;
        var width = Math.Max(1, (int)(NoiseWidthShare * PeriodSeconds * binRateHz));
        var slopes = Course.Slopes;
        double before = 0, after = 0;
        for (var n = 0; n < length; n++)
        {
            before += n > 0 ? pairs[2 * (n - 1)] : 0;
            before -= n > width ? pairs[2 * (n - 1 - width)] : 0;
            after += n + width < length ? pairs[2 * (n + width)] : 0;
            after -= n > 0 ? pairs[2 * n] : 0;
            after += n == 0 ? SumOf(pairs, 1, width - 1) : 0;
            slopes[n] = n >= width && n + width < length ? before - after : 0;
        }

        FindSteepest(NoiseReachShare * PeriodSeconds);
        Pairs = PairKind.None;
        judge.Dismiss();
        Keep();
    }

    private static double SumOf(ReadOnlySpan<double> pairs, int from, int count)
    {
        var sum = 0.0;
        for (var n = from; n < from + count && n < pairs.Length / 2; n++)
        {
            sum += pairs[2 * n];
        }

        return sum;
    }

    private void FindSteepest(double reachSeconds) => allCount = steepest.Find(Course.Slopes, reachSeconds * binRateHz, kept);

    private void Keep()
    {
        var slopes = Course.Slopes;
        var waves = allCount;
        secondCount = Pairs == PairKind.None ? 0 : TakeSeconds();
        if (Pairs == PairKind.SecondWave && judge.AreUneven)
        {
            weak.Dismiss();
        }
        else
        {
            allCount = weak.Drop(slopes[..^1], kept.AsSpan(0, allCount), UsualIntervalSeconds);
        }

        if (Pairs == PairKind.EarlyBeat)
        {
            allCount = WithSeconds(kept);
        }

        HasSecondWaves = Pairs == PairKind.SecondWave && secondCount > 0 && waves <= MostWavesOfBeat * allCount;
        for (var k = 0; k < allCount; k++)
        {
            kept[k] = Parabola.TopNear(slopes, (int)kept[k]);
        }

        Count = allCount;
        while (Count > 0 && kept[Count - 1] >= slopes.Length - edge)
        {
            Count--;
        }
    }

    private int WithSeconds(Span<double> rises)
    {
        seconds.AsSpan(0, secondCount).CopyTo(rises[allCount..]);
        rises[..(allCount + secondCount)].Sort();
        return allCount + secondCount;
    }

    // Out of those that are judged one by one.
    private int TakeSeconds()
    {
        int left = 0, taken = 0;
        for (var k = 0; k < allCount; k++)
        {
            if (judge.IsSecond(k))
            {
                seconds[taken++] = kept[k];
            }
            else
            {
                kept[left++] = kept[k];
            }
        }

        allCount = left;
        return taken;
    }
}
