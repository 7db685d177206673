using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// How alike the beats of a window are, and how high: each beat against the mean of all the others. Where early beats come in
/// turn with full ones there are two kinds of beat, and each is compared with its own.
/// </summary>
internal sealed class BeatShape
{
    private const int MostPoints = 200;

    // From the foot of the front to that of the next.
    private const double BeforeShare = 0.2;

    // Two of one kind at least to compare a third with; the interval before last returns to within breathing, the last does not.
    private const int LeastPairedBeats = 6;
    private const double PairedShare = 0.12;
    private const double UnlikeShare = 0.2;
    private readonly BeatLikeness[] kinds = [new(MostPoints), new(MostPoints)];
    private readonly double[] agreements = new double[64];
    private readonly double[] heights = new double[64];
    private readonly double[] sorted = new double[64];

    /// <summary>Correlation of each beat with the mean of the others, −1 to 1.</summary>
    public ReadOnlySpan<double> Agreements => agreements.AsSpan(0, Count);

    /// <summary>Trough to peak of each beat, natural logarithm of light.</summary>
    public ReadOnlySpan<double> Heights => heights.AsSpan(0, Count);

    /// <summary>Beats judged: those that lie wholly in the window are compared, the others stand as they are.</summary>
    public int Count { get; private set; }

    /// <summary>Lower quartile of <see cref="Agreements"/>; NaN with fewer than two beats.</summary>
    public double Agreement { get; private set; }

    /// <summary>Median of <see cref="Heights"/>; NaN without beats.</summary>
    public double Height { get; private set; }

    /// <summary>Judges the beats of a window.</summary>
    /// <param name="volumes">Blood volume, slow part removed.</param>
    /// <param name="rises">Steepest rises, in bins.</param>
    /// <param name="periodBins">Typical interval, bins.</param>
    public void Judge(ReadOnlySpan<double> volumes, ReadOnlySpan<double> rises, double periodBins)
    {
        Count = rises.Length;
        var before = Math.Max(1, (int)(BeforeShare * periodBins));
        var longest = Math.Clamp((int)periodBins, 4, MostPoints);
        var kindCount = AreInPairs(rises) ? 2 : 1;
        kinds[0].Clear(longest);
        kinds[1].Clear(longest);
        for (var k = 0; k < Count; k++)
        {
            kinds[k % kindCount].Add(BeatAt(volumes, rises, k, before, longest));
            heights[k] = HeightOf(volumes, rises[k], periodBins);
        }

        kinds[0].Weigh();
        kinds[1].Weigh();
        var whole = 0;
        for (var k = 0; k < Count; k++)
        {
            var beat = BeatAt(volumes, rises, k, before, longest);
            agreements[k] = kinds[k % kindCount].Of(beat);
            if (!beat.IsEmpty)
            {
                sorted[whole++] = agreements[k];
            }
        }

        Agreement = Count > 1 ? Quantile(whole, 0.25) : double.NaN;
        Height = MedianHeight();
    }

    // Short and long in turn, each as long as the one before last: chance does that in hardly any window.
    private static bool AreInPairs(ReadOnlySpan<double> rises)
    {
        if (rises.Length < LeastPairedBeats)
        {
            return false;
        }

        var pair = (rises[^1] + rises[^2] - rises[1] - rises[0]) / (rises.Length - 2);
        var sign = Math.Sign((2 * rises[1]) - rises[0] - rises[2]);
        for (var k = 2; k < rises.Length; k++)
        {
            var difference = sign * ((2 * rises[k - 1]) - rises[k - 2] - rises[k]);
            if (difference < UnlikeShare * pair / 2 || Math.Abs(rises[k] - rises[k - 2] - pair) > PairedShare * pair)
            {
                return false;
            }

            sign = -sign;
        }

        return true;
    }

    // A beat ends where the next one's front begins; empty where it does not lie wholly in the window.
    private static ReadOnlySpan<double> BeatAt(ReadOnlySpan<double> volumes, ReadOnlySpan<double> rises, int k, int before, int longest)
    {
        var start = (int)Math.Round(rises[k]) - before;
        var points = k + 1 < rises.Length ? Math.Min(longest, (int)(rises[k + 1] - rises[k])) : longest;
        return start >= 0 && start + points <= volumes.Length ? volumes.Slice(start, points) : [];
    }

    private static double HeightOf(ReadOnlySpan<double> volumes, double rise, double periodBins)
    {
        const double reachShare = 0.45;
        var centre = (int)Math.Round(rise);
        var reach = Math.Max(2, (int)(reachShare * periodBins));
        var end = Math.Min(volumes.Length, centre + reach);

        // The trough lies before the front, the peak behind it.
        return Highest(volumes[centre..end]) - Lowest(volumes[Math.Max(0, centre - reach)..(centre + 1)]);
    }

    private static double Lowest(ReadOnlySpan<double> volumes)
    {
        var two = Vector128.Create(volumes[^1]);
        for (var n = 0; n + 1 < volumes.Length; n += 2)
        {
            two = Vector128.MinNative(two, BloodCourse.TwoAt(volumes, n));
        }

        return Math.Min(two[0], two[1]);
    }

    private static double Highest(ReadOnlySpan<double> volumes)
    {
        var two = Vector128.Create(volumes[^1]);
        for (var n = 0; n + 1 < volumes.Length; n += 2)
        {
            two = Vector128.MaxNative(two, BloodCourse.TwoAt(volumes, n));
        }

        return Math.Max(two[0], two[1]);
    }

    private double MedianHeight()
    {
        Heights.CopyTo(sorted);
        return Quantile(Count, 0.5);
    }

    private double Quantile(int count, double share)
    {
        if (count == 0)
        {
            return double.NaN;
        }

        Array.Sort(sorted, 0, count);
        var place = share * (count - 1);
        var below = (int)place;
        return sorted[below] + ((place - below) * (sorted[Math.Min(below + 1, count - 1)] - sorted[below]));
    }
}
