using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// Finds the beats of a window by the steepest rise of blood volume: the pulse's front is its fastest part. A rise counts
/// where none steeper lies within a quarter of the period that the window repeats with, so that a second wave is no beat
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

    // Between a second wave, which hardly rises after smoothing, and the early beats of bigeminy, which rise 0.4 times as
    // steeply as full ones and more.
    private const double WeakestShare = 0.36;

    // A second wave comes within a quarter of the period behind the front; beats do not come within 0.18 s at 220 a minute,
    // and an early one may come 0.3 s behind another however long the period.
    private const double ReachShare = 0.25;
    private const double ShortestReachSeconds = 0.18;
    private const double LongestReachSeconds = 0.3;

    // Noise can make up most of a weak pulse's slope; what is left is not taken for less than this share of it.
    private const double LeastPulseShare = 0.2;

    // At its ends a window bends towards the slow fit: what rises there is not trusted.
    private const double EdgeSeconds = 0.2;
    private readonly double binRateHz;
    private readonly int edge;
    private readonly int stride;
    private readonly Autocorrelation repetition;
    private readonly double[] slopes;
    private readonly int[] candidates = new int[256];
    private readonly double[] kept = new double[MostBeats];

    public BeatFinder(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        edge = 1 + (int)(EdgeSeconds * binRateHz);
        stride = binRateHz >= 50 ? 2 : 1;
        repetition = new((design.LongestWindowBins / stride) + 1, (int)(LongestPeriodSeconds * binRateHz / stride) + 2);
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
        BloodSlope.Take(pairs, slopes);
        var (square, cube) = BloodSlope.PowersOf(slopes.AsSpan(edge, length - (2 * edge)));
        var count = length - (2 * edge);
        var variance = square / count;
        var pulse = Math.Max(variance - slopeNoise, variance * LeastPulseShare);
        FrontSteepness = pulse > 0 ? cube / count / (pulse * Math.Sqrt(pulse)) : 0;
    }

    private void FindPeriod(ReadOnlySpan<double> pairs, int length)
    {
        var coarse = repetition.Wave(length / stride);
        Thin(MemoryMarshal.Cast<double, Vector128<double>>(pairs), coarse);
        var rate = binRateHz / stride;
        var shortest = (int)Math.Ceiling(ShortestPeriodSeconds * rate);
        var longest = Math.Min((int)(LongestPeriodSeconds * rate), coarse.Length / 2);
        var autocorrelation = repetition.Of(coarse.Length, shortest - 1, longest + 1);
        var highest = HighestPeak(autocorrelation, shortest, longest);
        var lagOfPeriod = FirstPeak(autocorrelation, shortest, longest, FirstGoodShare * highest);
        Periodicity = highest > 0 ? autocorrelation[lagOfPeriod] : highest;
        PeriodSeconds = highest > 0 ? Refined(autocorrelation, lagOfPeriod) / rate : double.NaN;
    }

    private void Thin(ReadOnlySpan<Vector128<double>> lanes, Span<double> coarse)
    {
        for (var n = 0; n < coarse.Length; n++)
        {
            coarse[n] = stride == 2 ? (lanes[0] + lanes[1]).ToScalar() : lanes[0].ToScalar();
            lanes = lanes[stride..];
        }
    }

    private static double HighestPeak(ReadOnlySpan<double> autocorrelation, int shortest, int longest)
    {
        var highest = double.NegativeInfinity;
        for (var lag = shortest; lag <= longest; lag++)
        {
            if (IsPeak(autocorrelation, lag))
            {
                highest = Math.Max(highest, autocorrelation[lag]);
            }
        }

        return highest;
    }

    private static int FirstPeak(ReadOnlySpan<double> autocorrelation, int shortest, int longest, double enough)
    {
        var lag = shortest;
        while (lag < longest && !(IsPeak(autocorrelation, lag) && autocorrelation[lag] >= enough))
        {
            lag++;
        }

        return lag;
    }

    private static bool IsPeak(ReadOnlySpan<double> autocorrelation, int lag) =>
        autocorrelation[lag] >= autocorrelation[lag - 1] && autocorrelation[lag] > autocorrelation[lag + 1];

    private int Candidates(int length)
    {
        var count = 0;
        double before = slopes[edge - 1], slope = slopes[edge];
        var behind = slopes.AsSpan(edge + 1, length - (2 * edge));
        for (var n = 0; n < behind.Length && count < candidates.Length; n++)
        {
            var after = behind[n];
            if (slope > after && slope >= before && slope > 0)
            {
                candidates[count++] = edge + n;
            }

            before = slope;
            slope = after;
        }

        return count;
    }

    private void Keep(int candidateCount)
    {
        var period = double.IsNaN(PeriodSeconds) ? 0 : PeriodSeconds;
        var reach = Math.Clamp(ReachShare * period, ShortestReachSeconds, LongestReachSeconds) * binRateHz;
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
            kept[k] = Refined(slopes, (int)kept[k]);
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

    // Top of the parabola through a maximum and its neighbours.
    private static double Refined(ReadOnlySpan<double> values, int n)
    {
        var curve = values[n - 1] - (2 * values[n]) + values[n + 1];
        return curve < 0 ? n + (0.5 * (values[n - 1] - values[n + 1]) / curve) : n;
    }
}
