using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>How alike the beats of a window are, and how high: each beat's front against the mean of all.</summary>
internal sealed class BeatShape
{
    private const int MostPoints = 64;
    private readonly double[] mean = new double[MostPoints];
    private readonly double[] agreements = new double[64];
    private readonly double[] heights = new double[64];
    private readonly double[] sorted = new double[64];

    /// <summary>Correlation of each beat with the mean beat, −1 to 1.</summary>
    public ReadOnlySpan<double> Agreements => agreements.AsSpan(0, Count);

    /// <summary>Trough to peak of each beat, natural logarithm of light.</summary>
    public ReadOnlySpan<double> Heights => heights.AsSpan(0, Count);

    /// <summary>Beats judged: those that lie wholly in the window are compared, the others stand as they are.</summary>
    public int Count { get; private set; }

    /// <summary>Median of <see cref="Agreements"/>; NaN with fewer than two beats.</summary>
    public double Agreement { get; private set; }

    /// <summary>Median of <see cref="Heights"/>; NaN without beats.</summary>
    public double Height { get; private set; }

    /// <summary>Judges the beats of a window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed; blood volume is minus infrared.</param>
    /// <param name="rises">Steepest rises, in bins.</param>
    /// <param name="periodBins">Typical interval, bins.</param>
    public void Judge(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, double periodBins)
    {
        const double beforeShare = 0.18;
        const double afterShare = 0.4;
        Count = rises.Length;
        var before = Math.Max(1, (int)(beforeShare * periodBins));
        var points = Math.Clamp(before + (int)(afterShare * periodBins), 4, MostPoints);
        BuildMean(pairs, rises, before, points);
        for (var k = 0; k < Count; k++)
        {
            var start = (int)Math.Round(rises[k]) - before;
            agreements[k] = IsWhole(pairs, start, points) ? Correlation(pairs, start, points) : 0;
            heights[k] = HeightOf(pairs, rises[k], periodBins);
        }

        Agreement = Count > 1 ? MedianOfWhole(pairs, rises, before, points) : double.NaN;
        Height = MedianHeight();
    }

    private static bool IsWhole(ReadOnlySpan<double> pairs, int start, int points) =>
        start >= 0 && start + points <= pairs.Length / 2;

    private void BuildMean(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, int before, int points)
    {
        mean.AsSpan(0, points).Clear();
        foreach (var rise in rises)
        {
            var start = (int)Math.Round(rise) - before;
            if (!IsWhole(pairs, start, points))
            {
                continue;
            }

            for (var n = 0; n < points; n++)
            {
                mean[n] -= pairs[2 * (start + n)];
            }
        }

        var average = 0.0;
        for (var n = 0; n < points; n++)
        {
            average += mean[n] / points;
        }

        for (var n = 0; n < points; n++)
        {
            mean[n] -= average;
        }
    }

    private double Correlation(ReadOnlySpan<double> pairs, int start, int points)
    {
        double sum = 0, square = 0, cross = 0, meanSquare = 0;
        for (var n = 0; n < points; n++)
        {
            var value = -pairs[2 * (start + n)];
            sum += value;
            square += value * value;
            cross += value * mean[n];
            meanSquare += mean[n] * mean[n];
        }

        var power = (square - (sum * sum / points)) * meanSquare;
        return power > 0 ? cross / Math.Sqrt(power) : 0;
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

    private double MedianOfWhole(ReadOnlySpan<double> pairs, ReadOnlySpan<double> rises, int before, int points)
    {
        var count = 0;
        for (var k = 0; k < Count; k++)
        {
            if (IsWhole(pairs, (int)Math.Round(rises[k]) - before, points))
            {
                sorted[count++] = agreements[k];
            }
        }

        return Median(count);
    }

    private double MedianHeight()
    {
        Heights.CopyTo(sorted);
        return Median(Count);
    }

    private double Median(int count)
    {
        if (count == 0)
        {
            return double.NaN;
        }

        Array.Sort(sorted, 0, count);
        return 0.5 * (sorted[(count - 1) / 2] + sorted[count / 2]);
    }
}
