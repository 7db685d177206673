namespace PulseStream.Signal;

/// <summary>
/// Finds the second waves of a heart that keeps no rhythm: a weaker front behind each full one, of the same share of its
/// steepness, after the same share of its interval or after the same time. Beats that come as they like keep to neither.
/// </summary>
internal sealed class UnevenPairs(double binRateHz, double leastSpread)
{
    private const int MostRises = 64;

    // A second wave as steep as this is told from a beat by nothing; one that is less steep than that is told by its steepness alone.
    private const double SteepestShare = 0.85;
    private const double LeastShare = 0.3;

    // Of their medians, shares of steepness differ by no more than this factor either way, and delays by so much of an interval
    // or by so long.
    private const double SteepnessFactor = 1.8;
    private const double SameDelayShare = 0.1;
    private const double SameDelaySeconds = 0.08;

    // A front so much less steep than the one before is a ripple.
    private const double LeastFullShare = 0.2;

    // A beat without one, or with a ripple beside it, is seldom.
    private const double MissedCost = 0.3;
    private const double RippleCost = 0.5;

    // The newest beat may last so much longer than all before it, and its second wave come as much later.
    private const double LongerBeat = 1.2;

    // The first full front lies among so many rises.
    private const int MostBeforeFirst = 3;
    private const int LeastPairs = 4;
    private const int LeastKnownPairs = 3;
    private const double LeastPairedShare = 0.6;

    // Of two intervals that have nothing to do with each other, the first differs by half of what their sum does, once a share of it is
    // taken out; of two fronts that have nothing to do with each other, the steepness differs by as much as beats do.
    private const double MostOfSpread = 0.25;
    private const double MostSteepnessSpread = 0.18;

    // Where they keep so well to their delay, an early beat's may be another share of it.
    private const double SureOfSpread = 0.12;
    private const double SureSteepnessSpread = 0.3;

    // From a full front back to its foot, as a share of the interval.
    private const double FootReachShare = 0.3;

    // Later than this behind a front, as a share of the interval, comes the next one's beat.
    private const double LatestShare = 0.47;

    private readonly bool[] isSecond = new bool[MostRises];
    private readonly double[] shares = new double[MostRises];
    private readonly double[] delays = new double[MostRises];
    private readonly double[] intervals = new double[MostRises];
    private readonly double[] fronts = new double[MostRises];
    private readonly double[] secondFronts = new double[MostRises];
    private readonly double[] feet = new double[MostRises];
    private readonly double[] scores = new double[MostRises];
    private readonly int[] formers = new int[MostRises];
    private readonly double[] delayShares = new double[MostRises];
    private int count;

    /// <summary>Whether a rise, by its number, is a second wave.</summary>
    public bool IsSecond(int k) => isSecond[k];

    /// <summary>Whether they would be found in this window alone.</summary>
    public bool AreSure { get; private set; }

    /// <summary>Whether those found may as well be beats of a heart that beats in groups: a high second wave of another keeps to its beat in the same way.</summary>
    public bool MayBeOfGroups { get; private set; }

    /// <summary>Mean interval of the beats that have one, s.</summary>
    public double IntervalSeconds { get; private set; }

    /// <summary>Finds them in a window.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order; 64 at most.</param>
    /// <param name="isKnown">Whether they were seen in the windows before: one that a window's end bends is then let pass.</param>
    /// <returns>Whether most beats have one.</returns>
    public bool TryFind(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, bool isKnown)
    {
        AreSure = false;
        isSecond.AsSpan().Clear();
        if (!TryGuess(slopes, rises, out var usual))
        {
            return false;
        }

        var last = Walk(slopes, rises, usual);
        Mark(slopes, rises, usual, last, out var beats);
        if (count < (isKnown ? LeastKnownPairs : LeastPairs) || count < LeastPairedShare * beats)
        {
            return false;
        }

        return AreSecondWaves(isKnown);
    }

    private bool AreSecondWaves(bool isKnown)
    {
        var (interval, deviation) = Spread.Of(intervals.AsSpan(0, count));
        IntervalSeconds = interval / binRateHz;
        for (var k = 0; k < count; k++)
        {
            delayShares[k] = delays[k] / intervals[k];
        }

        // What is left of the spread of the delays once they are a share of their intervals, or a time, whichever fits better.
        var (delayShare, byShare) = Spread.Of(delayShares.AsSpan(0, count));
        var byTime = Spread.Of(delays.AsSpan(0, count)).Deviation / interval;
        var spread = deviation / interval;
        var left = Math.Min(byShare, byTime);
        var (steepness, steepnessSpread) = Spread.Of(shares.AsSpan(0, count));
        var differ = steepnessSpread / steepness;
        if (!(delayShare < LatestShare && steepness > LeastShare && HaveTheirShape(delayShare, steepness, differ)))
        {
            return false;
        }

        AreSure = count >= LeastPairs
            && spread >= leastSpread
            && left < MostOfSpread * spread
            && differ < (left < SureOfSpread * spread ? SureSteepnessSpread : MostSteepnessSpread);
        return AreSure || (isKnown && left < MostOfSpread * Math.Max(2 * spread, leastSpread) && differ < 2 * MostSteepnessSpread);
    }

    // Two beats of a heart that flutters, a strong one and a weak one in turn, keep to each other for a window now and then.
    private bool HaveTheirShape(double delayShare, double steepness, double differ)
    {
        var pairs = new RisePairs(IntervalSeconds, delayShare * IntervalSeconds, steepness, Spread.MedianOf(feet.AsSpan(0, count)), Spread.MedianOf(fronts.AsSpan(0, count)) / binRateHz, Spread.MedianOf(secondFronts.AsSpan(0, count)) / binRateHz, differ, double.PositiveInfinity);
        MayBeOfGroups = EarlyOrSecond.AreOfGroups(pairs);
        return PairVerdict.Of(pairs) == PairKind.SecondWave && !EarlyOrSecond.AreAsLikelyBeatsWithoutRhythm(pairs);
    }

    // Of three fronts in a row, the one in the middle is the weaker of the first's beat in every second place.
    private bool TryGuess(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, out Usual usual)
    {
        count = 0;
        for (var k = 0; k + 2 < rises.Length; k++)
        {
            var share = slopes[(int)rises[k + 1]] / slopes[(int)rises[k]];
            if (share < SteepestShare)
            {
                shares[count] = share;
                delayShares[count] = (rises[k + 1] - rises[k]) / (rises[k + 2] - rises[k]);
                delays[count++] = rises[k + 1] - rises[k];
            }
        }

        usual = count < LeastPairs ? default : new(Spread.MedianOf(shares.AsSpan(0, count)), Spread.MedianOf(delayShares.AsSpan(0, count)), Spread.MedianOf(delays.AsSpan(0, count)));
        return count >= LeastPairs;
    }

    // The row of full fronts behind most of which a second wave is found; the number of its last.
    private int Walk(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, in Usual usual)
    {
        var last = 0;
        for (var k = 0; k < rises.Length; k++)
        {
            (scores[k], formers[k]) = k < MostBeforeFirst ? (0, -1) : (double.NegativeInfinity, -1);
            for (var former = Math.Max(0, k - 3); former < k; former++)
            {
                var score = scores[former] + GainOf(slopes, rises, former, k, usual);
                if (score > scores[k])
                {
                    (scores[k], formers[k]) = (score, former);
                }
            }

            last = scores[k] >= scores[last] ? k : last;
        }

        return last;
    }

    private double GainOf(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int former, int next, in Usual usual)
    {
        if (slopes[(int)rises[next]] < LeastFullShare * slopes[(int)rises[former]])
        {
            return double.NegativeInfinity;
        }

        var waves = next - former - 1;
        return waves == 0 ? -MissedCost
            : !Fits(slopes, rises, former, Second(slopes, rises, former, next), next, usual) ? double.NegativeInfinity
            : waves == 1 ? 1
            : 1 - RippleCost;
    }

    private void Mark(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, in Usual usual, int last, out int beats)
    {
        count = 0;
        beats = 0;
        var next = last;
        for (var full = formers[next]; full >= 0; full = formers[next])
        {
            beats++;
            if (next - full > 1)
            {
                var second = Second(slopes, rises, full, next);
                isSecond.AsSpan((full + 1)..next).Fill(true);
                shares[count] = slopes[(int)rises[second]] / slopes[(int)rises[full]];
                delays[count] = rises[second] - rises[full];
                fronts[count] = FrontWidth.BinsOf(slopes, rises[full]);
                secondFronts[count] = FrontWidth.BinsOf(slopes, rises[second]);
                feet[count] = RiseFoot.ShareOf(slopes, rises[full], rises[second], rises[next], FootReachShare * (rises[next] - rises[full]));
                intervals[count++] = rises[next] - rises[full];
            }

            next = full;
        }

        MarkEnds(slopes, rises, next, last);
    }

    // The second wave of a beat whose front lies before the window, and that of one whose next lies behind it: the window's ends
    // take some of their steepness, and how long the newest beat lasts is not known.
    private void MarkEnds(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int first, int last)
    {
        for (var k = 0; k < first; k++)
        {
            isSecond[k] = slopes[(int)rises[k]] < SteepestShare * slopes[(int)rises[first]];
        }

        var latest = count > 0 ? LongerBeat * Max(delays) : 0;
        var full = last;
        for (var k = last + 1; k < rises.Length; k++)
        {
            isSecond[k] = slopes[(int)rises[k]] < SteepestShare * slopes[(int)rises[full]] && rises[k] - rises[full] < latest;
            full = isSecond[k] ? full : k;
        }
    }

    private double Max(double[] values)
    {
        var max = values[0];
        foreach (var value in values.AsSpan(1, count - 1))
        {
            max = Math.Max(max, value);
        }

        return max;
    }

    private static bool IsLike(double share, in Usual usual) =>
        share < SteepestShare && Math.Max(share / usual.Share, usual.Share / share) < SteepnessFactor;

    private bool Fits(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int full, int second, int next, in Usual usual)
    {
        var share = slopes[(int)rises[second]] / slopes[(int)rises[full]];
        var delay = rises[second] - rises[full];
        return IsLike(share, usual)
            && (Math.Abs((delay / (rises[next] - rises[full])) - usual.DelayShare) < SameDelayShare
                || Math.Abs(delay - usual.Delay) < SameDelaySeconds * binRateHz);
    }

    private static int Second(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int full, int next)
    {
        var second = full + 1;
        for (var j = second + 1; j < next; j++)
        {
            second = slopes[(int)rises[j]] > slopes[(int)rises[second]] ? j : second;
        }

        return second;
    }

    private readonly record struct Usual(double Share, double DelayShare, double Delay);
}
