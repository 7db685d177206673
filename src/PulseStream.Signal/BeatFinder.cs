namespace PulseStream.Signal;

/// <summary>
/// Finds the beats of a window by the steepest rise of blood volume: the pulse's front is its fastest part. A rise counts
/// where none steeper lies within a third of the period that the window repeats with, so that a second wave is no beat
/// and an early beat is one.
/// </summary>
internal sealed class BeatFinder
{
    private const int MostBeats = 64;

    // 33 to 220 beats a minute: what a finger can show and an oximeter is asked for.
    private const double ShortestPeriodSeconds = 0.27;
    private const double LongestPeriodSeconds = 1.8;

    // The first repetition as good as the best is the period; the later ones are its multiples.
    private const double FirstGoodShare = 0.85;

    // A second wave rises at most a quarter as steeply as the front; an early, weak beat does more.
    private const double WeakestShare = 0.36;
    // At its ends a window bends towards the slow fit: what rises there is not trusted.
    private const double EdgeSeconds = 0.2;
    private readonly double binRateHz;
    private readonly int edge;
    private readonly int stride;
    private readonly double[] coarse;
    private readonly double[] slopes;
    private readonly int[] candidates = new int[256];
    private readonly double[] kept = new double[MostBeats];

    public BeatFinder(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        edge = 1 + (int)(EdgeSeconds * binRateHz);
        stride = binRateHz >= 50 ? 2 : 1;
        coarse = new double[(design.LongestWindowBins / stride) + 1];
        slopes = new double[design.LongestWindowBins];
    }

    /// <summary>Places of the steepest rises in the window, in bins from its start, between bins.</summary>
    public ReadOnlySpan<double> Rises => kept.AsSpan(0, Count);

    /// <summary>How many beats were found.</summary>
    public int Count { get; private set; }

    /// <summary>The period with which the window repeats, s; NaN where it does not.</summary>
    public double PeriodSeconds { get; private set; }

    /// <summary>Autocorrelation at that period, −1 to 1.</summary>
    public double Periodicity { get; private set; }

    /// <summary>Third moment of the slope over its second to 3/2, white noise taken out: blood comes faster than it goes.</summary>
    public double FrontSteepness { get; private set; }

    /// <summary>Finds the beats of a window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed; blood volume is minus infrared.</param>
    /// <param name="slopeNoise">Variance of white noise in a central difference of two bins.</param>
    public void Find(ReadOnlySpan<double> pairs, double slopeNoise)
    {
        var length = pairs.Length / 2;
        TakeSlopes(pairs, length, slopeNoise);
        FindPeriod(pairs, length);
        var count = Candidates(length);
        Keep(count);
    }

    private void TakeSlopes(ReadOnlySpan<double> pairs, int length, double slopeNoise)
    {
        for (var n = 1; n < length - 1; n++)
        {
            slopes[n] = pairs[2 * (n - 1)] - pairs[2 * (n + 1)];
        }

        double square = 0, cube = 0;
        for (var n = edge; n < length - edge; n++)
        {
            square += slopes[n] * slopes[n];
            cube += slopes[n] * slopes[n] * slopes[n];
        }

        var count = length - (2 * edge);
        var variance = square / count;
        var pulse = Math.Max(variance - slopeNoise, variance * 0.2);
        FrontSteepness = pulse > 0 ? cube / count / (pulse * Math.Sqrt(pulse)) : 0;
    }

    private void FindPeriod(ReadOnlySpan<double> pairs, int length)
    {
        var coarseLength = length / stride;
        for (var n = 0; n < coarseLength; n++)
        {
            coarse[n] = stride == 2 ? pairs[4 * n] + pairs[(4 * n) + 2] : pairs[2 * n];
        }

        var rate = binRateHz / stride;
        var shortest = (int)Math.Ceiling(ShortestPeriodSeconds * rate);
        var longest = Math.Min((int)(LongestPeriodSeconds * rate), coarseLength / 2);
        var best = BestPeak(coarseLength, shortest, longest, double.NegativeInfinity);
        var first = best.Height > 0 ? BestPeak(coarseLength, shortest, longest, FirstGoodShare * best.Height) : best;
        Periodicity = first.Height;
        PeriodSeconds = first.Height > 0 ? first.Lag / rate : double.NaN;
    }

    private (double Lag, double Height) BestPeak(int length, int shortest, int longest, double enough)
    {
        (double Lag, double Height) best = (0, double.NegativeInfinity);
        var before = AutocorrelationAt(length, shortest - 1);
        var here = AutocorrelationAt(length, shortest);
        for (var lag = shortest; lag <= longest; lag++)
        {
            var after = AutocorrelationAt(length, lag + 1);
            if (here >= before && here > after && here > best.Height)
            {
                best = (lag + (0.5 * (before - after) / (before - (2 * here) + after)), here);
                if (here >= enough && enough > double.NegativeInfinity)
                {
                    return best;
                }
            }

            before = here;
            here = after;
        }

        return best;
    }

    private double AutocorrelationAt(int length, int lag)
    {
        double cross = 0, early = 0, late = 0;
        for (var n = 0; n + lag < length; n++)
        {
            var a = coarse[n];
            var b = coarse[n + lag];
            cross += a * b;
            early += a * a;
            late += b * b;
        }

        return early > 0 && late > 0 ? cross / Math.Sqrt(early * late) : 0;
    }

    private int Candidates(int length)
    {
        var count = 0;
        for (var n = edge; n < length - edge && count < candidates.Length; n++)
        {
            if (slopes[n] > 0 && slopes[n] >= slopes[n - 1] && slopes[n] > slopes[n + 1])
            {
                candidates[count++] = n;
            }
        }

        return count;
    }

    private void Keep(int candidateCount)
    {
        const double reachShare = 0.25;
        const double shortestReachSeconds = 0.18;
        const double longestReachSeconds = 0.3;
        var period = double.IsNaN(PeriodSeconds) ? 0 : PeriodSeconds;
        var reach = Math.Clamp(reachShare * period, shortestReachSeconds, longestReachSeconds) * binRateHz;
        Count = 0;
        for (var k = 0; k < candidateCount && Count < MostBeats; k++)
        {
            if (IsSteepest(k, candidateCount, reach))
            {
                kept[Count++] = candidates[k];
            }
        }

        DropWeak();
        for (var k = 0; k < Count; k++)
        {
            kept[k] = Refined((int)kept[k]);
        }
    }

    private bool IsSteepest(int k, int count, double reach)
    {
        var own = slopes[candidates[k]];
        for (var j = k - 1; j >= 0 && candidates[k] - candidates[j] <= reach; j--)
        {
            if (slopes[candidates[j]] >= own)
            {
                return false;
            }
        }

        for (var j = k + 1; j < count && candidates[j] - candidates[k] <= reach; j++)
        {
            if (slopes[candidates[j]] > own)
            {
                return false;
            }
        }

        return true;
    }

    // The upper quartile stands for a normal beat even where half of them are weak, as in bigeminy.
    private void DropWeak()
    {
        Span<double> steepness = stackalloc double[MostBeats];
        steepness = steepness[..Count];
        for (var k = 0; k < Count; k++)
        {
            steepness[k] = slopes[(int)kept[k]];
        }

        steepness.Sort();
        var limit = Count > 0 ? WeakestShare * steepness[(int)(0.75 * (Count - 1))] : 0;
        var left = 0;
        for (var k = 0; k < Count; k++)
        {
            if (slopes[(int)kept[k]] >= limit)
            {
                kept[left++] = kept[k];
            }
        }

        Count = left;
    }

    private double Refined(int n)
    {
        var curve = slopes[n - 1] - (2 * slopes[n]) + slopes[n + 1];
        return curve < 0 ? n + (0.5 * (slopes[n - 1] - slopes[n + 1]) / curve) : n;
    }
}
