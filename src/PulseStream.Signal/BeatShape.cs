using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>How alike the beats of a window are, and how high: each beat against the mean of all the others.</summary>
internal sealed class BeatShape
{
    private const int MostPoints = 200;

    // From the foot of the front to that of the next.
    private const double BeforeShare = 0.2;
    private readonly double[] sums = new double[MostPoints];
    private readonly int[] counts = new int[MostPoints];
    private readonly double[] weights = new double[MostPoints];
    private readonly double[] agreements = new double[64];
    private readonly double[] heights = new double[64];
    private readonly double[] sorted = new double[64];
    private int compared;

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
    /// <param name="pairs">Infrared and red in turn, slow part removed; blood volume is minus infrared.</param>
    /// <param name="rises">Steepest rises, in bins.</param>
    /// <param name="periodBins">Typical interval, bins.</param>
    public void Judge(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, double periodBins)
    {
        Count = rises.Length;
        var before = Math.Max(1, (int)(BeforeShare * periodBins));
        var longest = Math.Clamp((int)periodBins, 4, MostPoints);
        Sum(pairs, rises, before, longest);
        for (var k = 0; k < Count; k++)
        {
            var start = (int)Math.Round(rises[k]) - before;
            agreements[k] = IsWhole(pairs, start, PointsOf(rises, k, longest)) ? Likeness(pairs, start, PointsOf(rises, k, longest)) : 0;
            heights[k] = HeightOf(pairs, rises[k], periodBins);
        }

        Agreement = Count > 1 ? QuartileOfWhole(pairs, rises, before, longest) : double.NaN;
        Height = MedianHeight();
    }

    // A beat ends where the next one's front begins.
    private static int PointsOf(ReadOnlySpan<double> rises, int k, int longest) =>
        k + 1 < rises.Length ? Math.Min(longest, (int)(rises[k + 1] - rises[k])) : longest;

    private static bool IsWhole(ReadOnlySpan<double> pairs, int start, int points) =>
        start >= 0 && start + points <= pairs.Length / 2;

    private void Sum(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, int before, int longest)
    {
        sums.AsSpan(0, longest).Clear();
        counts.AsSpan(0, longest).Clear();
        for (var k = 0; k < rises.Length; k++)
        {
            var start = (int)Math.Round(rises[k]) - before;
            var points = PointsOf(rises, k, longest);
            if (!IsWhole(pairs, start, points))
            {
                continue;
            }

            for (var n = 0; n < points; n++)
            {
                sums[n] -= pairs[2 * (start + n)];
                counts[n]++;
            }
        }

        // Fewer beats reach the later points: those that one beat alone reaches are compared with nothing.
        compared = 0;
        while (compared < longest && counts[compared] > 1)
        {
            weights[compared] = 1.0 / (counts[compared] - 1);
            compared++;
        }
    }

    // With the mean of all the others: a beat is always like a mean that it is part of.
    private double Likeness(ReadOnlySpan<double> pairs, int start, int points)
    {
        double a = 0, b = 0, aa = 0, ab = 0, bb = 0;
        var used = Math.Min(points, compared);
        var light = pairs.Slice(2 * start, 2 * used);
        for (var n = 0; n < used; n++)
        {
            var own = -light[2 * n];
            var others = (sums[n] - own) * weights[n];
            a += own;
            b += others;
            aa += own * own;
            ab += own * others;
            bb += others * others;
        }

        var power = (aa - (a * a / used)) * (bb - (b * b / used));
        return used > 0 && power > 0 ? (ab - (a * b / used)) / Math.Sqrt(power) : 0;
    }

    private static double HeightOf(ReadOnlySpan<double> pairs, double rise, double periodBins)
    {
        const double reachShare = 0.45;
        var centre = (int)Math.Round(rise);
        var reach = Math.Max(2, (int)(reachShare * periodBins));
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        var end = Math.Min(lanes.Length, centre + reach);

        // Blood is minus infrared: its trough is the brightest light before the front, its peak the darkest behind.
        return Brightest(lanes[Math.Max(0, centre - reach)..(centre + 1)]) - Darkest(lanes[centre..end]);
    }

    private static double Brightest(ReadOnlySpan<Vector128<double>> lanes)
    {
        var light = lanes[0];
        foreach (var lane in lanes)
        {
            light = Vector128.MaxNative(light, lane);
        }

        return light[0];
    }

    private static double Darkest(ReadOnlySpan<Vector128<double>> lanes)
    {
        var light = lanes[0];
        foreach (var lane in lanes)
        {
            light = Vector128.MinNative(light, lane);
        }

        return light[0];
    }

    private double QuartileOfWhole(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, int before, int longest)
    {
        var count = 0;
        for (var k = 0; k < Count; k++)
        {
            if (IsWhole(pairs, (int)Math.Round(rises[k]) - before, PointsOf(rises, k, longest)))
            {
                sorted[count++] = agreements[k];
            }
        }

        return Quantile(count, 0.25);
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
