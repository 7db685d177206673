namespace PulseStream.Signal;

/// <summary>Finds fronts that come in pairs: a weaker one at the same delay behind each full one.</summary>
internal sealed class PairFinder(double binRateHz)
{
    private const int MostRises = 64;

    // Within this share of a period of a steeper one a front is no full beat's; an early beat's delay leaves more before the next.
    private const double FullReachShare = 0.75;

    // Breathing moves intervals by less; a longer or shorter one is no period.
    private const double ShortestShare = 0.75;
    private const double LongestShare = 1.3;

    // Where more of them differ from it than a pause after an early beat makes, fronts come in groups and the period is that of some within.
    private const double LeastOfPeriodShare = 0.6;

    // The weaker front comes at the same delay to within this, or at the same share of an interval that breathing stretches, in so many of the periods.
    private const double SameDelaySeconds = 0.06;
    private const double SameShare = 0.75;
    private const int LeastPairs = 3;

    // A window holds no more of those that come more slowly than any pulse. Two have no scatter: they differ by their shape alone.
    private const int LeastSlowPairs = 2;

    // Of fewer pairs the spread of their delays is chance.
    private const int LeastSpreadPairs = 4;

    // Less of the usual weaker front is a ripple.
    private const double RippleShare = 0.4;

    // From a full front back to its foot, as a share of the period.
    private const double FootReachShare = 0.3;
    private readonly bool[] isFull = new bool[MostRises];
    private readonly bool[] isSecond = new bool[MostRises];
    private readonly double[] steepness = new double[MostRises];
    private readonly double[] delays = new double[MostRises];
    private readonly (int Full, int Second, int Next)[] numbers = new (int, int, int)[MostRises];
    private readonly double[] delayShares = new double[MostRises];
    private readonly double[] slopeShares = new double[MostRises];
    private readonly double[] footShares = new double[MostRises];
    private readonly double[] exactDelays = new double[MostRises];
    private readonly double[] exactIntervals = new double[MostRises];
    private readonly double[] fronts = new double[MostRises];
    private readonly double[] secondFronts = new double[MostRises];
    private int count;

    /// <summary>Whether a rise, by its number, is the weaker one of a pair.</summary>
    public bool IsSecond(int k) => isSecond[k];

    /// <summary>Finds the pairs of a window.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order; 64 at most.</param>
    /// <param name="periodSeconds">The period to look for, s.</param>
    /// <param name="pairs">Their medians.</param>
    /// <param name="leastContrast">Of pairs that alternate less nothing is asked.</param>
    /// <param name="longestSeconds">Nor of those with as long a period, s.</param>
    /// <returns>Whether fronts come in pairs.</returns>
    public bool TryFind(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, double periodSeconds, out RisePairs pairs, double leastContrast = double.NegativeInfinity, double longestSeconds = double.PositiveInfinity)
    {
        pairs = default;
        var period = periodSeconds * binRateHz;
        for (var k = 0; k < rises.Length; k++)
        {
            steepness[k] = slopes[(int)rises[k]];
        }

        MarkFull(rises, FullReachShare * period);
        var (periods, bins, intervals) = Measure(rises, period);
        if (count < (periodSeconds > Repetition.LongestPeriodSeconds ? LeastSlowPairs : LeastPairs) || bins / periods / binRateHz >= longestSeconds)
        {
            return false;
        }

        var (mean, deviation) = Spread.Of(slopeShares.AsSpan(0, count));
        var contrast = (1 - mean) * Math.Sqrt(count) / deviation;
        if (contrast < leastContrast)
        {
            return false;
        }

        var delay = Spread.MedianOf(delays.AsSpan(0, count));
        var nearest = SameDelaySeconds * binRateHz;
        var byTime = CountNear(delays, delay, nearest);
        var byShare = CountNear(delayShares, Spread.MedianOf(delayShares.AsSpan(0, count)), nearest / period);
        if (Math.Max(byTime, byShare) < SameShare * periods)
        {
            return false;
        }

        MeasureShapes(slopes, rises, FootReachShare * period);
        var (delaySpread, intervalSpread) = SpreadsOf(slopes, rises);
        pairs = new RisePairs(bins / periods / binRateHz, delay / binRateHz, Spread.MedianOf(slopeShares.AsSpan(0, count)), Spread.MedianOf(footShares.AsSpan(0, count)), Spread.MedianOf(fronts.AsSpan(0, count)) / binRateHz, Spread.MedianOf(secondFronts.AsSpan(0, count)) / binRateHz, RobustScatter(), contrast) with { DelaySpreadSeconds = delaySpread, IntervalSpreadSeconds = intervalSpread };
        if (periods < LeastOfPeriodShare * intervals && EarlyOrSecond.AreOfGroups(pairs))
        {
            return false;
        }

        MarkSecond(rises, pairs, period);
        return true;
    }

    private void MarkFull(ReadOnlySpan<double> rises, double reach)
    {
        for (var k = 0; k < rises.Length; k++)
        {
            isFull[k] = true;
            for (var j = k - 1; isFull[k] && j >= 0 && rises[k] - rises[j] < reach; j--)
            {
                isFull[k] &= !(steepness[j] > steepness[k]);
            }

            for (var j = k + 1; isFull[k] && j < rises.Length && rises[j] - rises[k] < reach; j++)
            {
                isFull[k] &= !(steepness[j] > steepness[k]);
            }
        }
    }

    private (int Periods, double Bins, int Intervals) Measure(ReadOnlySpan<double> rises, double period)
    {
        count = 0;
        var last = -1;
        var periods = 0;
        var bins = 0.0;
        var intervals = 0;
        for (var k = 0; k < rises.Length; k++)
        {
            if (!isFull[k])
            {
                continue;
            }

            intervals += last >= 0 ? 1 : 0;
            var interval = last >= 0 ? rises[k] - rises[last] : 0;
            if (interval > ShortestShare * period && interval < LongestShare * period)
            {
                periods++;
                bins += interval;
                MeasurePair(rises, last, k);
            }

            last = k;
        }

        return (periods, bins, intervals);
    }

    private void MeasurePair(ReadOnlySpan<double> rises, int full, int next)
    {
        var second = full + 1;
        for (var j = second + 1; j < next; j++)
        {
            second = steepness[j] > steepness[second] ? j : second;
        }

        if (second < next)
        {
            delays[count] = rises[second] - rises[full];
            delayShares[count] = delays[count] / (rises[next] - rises[full]);
            slopeShares[count] = steepness[second] / steepness[full];
            numbers[count++] = (full, second, next);
        }
    }

    private void MeasureShapes(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, double footReach)
    {
        for (var k = 0; k < count; k++)
        {
            var (full, second, next) = numbers[k];
            fronts[k] = FrontWidth.BinsOf(slopes, rises[full]);
            secondFronts[k] = FrontWidth.BinsOf(slopes, rises[second]);
            footShares[k] = RiseFoot.ShareOf(slopes, rises[full], rises[second], rises[next], footReach);
        }
    }

    // Tops between bins: a delay keeps to its time by less than a bin.
    private (double Delays, double Intervals) SpreadsOf(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises)
    {
        if (count < LeastSpreadPairs)
        {
            return default;
        }

        for (var k = 0; k < count; k++)
        {
            var (full, second, next) = numbers[k];
            var front = Parabola.TopNear(slopes, (int)rises[full]);
            exactDelays[k] = Parabola.TopNear(slopes, (int)rises[second]) - front;
            exactIntervals[k] = Parabola.TopNear(slopes, (int)rises[next]) - front;
        }

        return (Spread.Of(exactDelays.AsSpan(0, count)).Deviation / binRateHz, Spread.Of(exactIntervals.AsSpan(0, count)).Deviation / binRateHz);
    }

    private int CountNear(double[] values, double middle, double nearest)
    {
        var near = 0;
        foreach (var value in values.AsSpan(0, count))
        {
            near += Math.Abs(value - middle) <= nearest ? 1 : 0;
        }

        return near;
    }

    // Behind a full front, after the usual time or the usual share of its interval, or where it would be behind one that lies before the window.
    private void MarkSecond(ReadOnlySpan<double> rises, in RisePairs pairs, double period)
    {
        var nearest = SameDelaySeconds * binRateHz;
        var delay = pairs.DelaySeconds * binRateHz;
        var rest = (pairs.PeriodSeconds - pairs.DelaySeconds) * binRateHz;
        var ripple = RippleShare * pairs.SlopeShare;
        var latest = (LongestShare * delay) + nearest;
        var first = isFull.AsSpan(0, rises.Length).IndexOf(true);
        for (var k = 0; k < rises.Length; k++)
        {
            var own = steepness[k];
            isSecond[k] = k < first && Math.Abs(rises[first] - rises[k] - rest) <= nearest && own >= ripple * steepness[first];
            for (var j = k - 1; j >= 0 && rises[k] - rises[j] <= latest; j--)
            {
                var after = rises[k] - rises[j];
                isSecond[k] |= isFull[j]
                    && own >= ripple * steepness[j]
                    && (Math.Abs(after - delay) <= nearest || Math.Abs(after - (pairs.DelayShare * IntervalFrom(rises, j, period, after / pairs.DelayShare))) <= nearest);
            }

            isSecond[k] &= !isFull[k];
        }
    }

    // To the next full front, where it is no more than breathing makes of a period; that of the newest is not known and may be what fits.
    private double IntervalFrom(ReadOnlySpan<double> rises, int full, double period, double fitting)
    {
        var next = full + 1;
        while (next < rises.Length && !isFull[next])
        {
            next++;
        }

        var interval = next < rises.Length ? rises[next] - rises[full] : fitting;
        return interval > ShortestShare * period && interval < LongestShare * period ? interval : period;
    }

    // One pair at the window's end, bent with it, counts for no more than another.
    private double RobustScatter()
    {
        const double deviationsPerMedian = 1.48;
        var median = Spread.MedianOf(slopeShares.AsSpan(0, count));
        for (var k = 0; k < count; k++)
        {
            delays[k] = Math.Abs(slopeShares[k] - median);
        }

        return deviationsPerMedian * Spread.MedianOf(delays.AsSpan(0, count)) / median;
    }
}
