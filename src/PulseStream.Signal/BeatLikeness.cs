using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>How like the mean of all the others each beat of a window is: a beat is always like a mean that it is part of.</summary>
internal sealed class BeatLikeness(int mostPoints)
{
    private readonly double[] sums = new double[mostPoints + 1];
    private readonly double[] weights = new double[mostPoints + 1];
    private readonly int[] ends = new int[mostPoints + 1];
    private int longestBeat;
    private int count;
    private int compared;

    /// <summary>Forgets the beats.</summary>
    /// <param name="longest">Points of the longest that will be added.</param>
    public void Clear(int longest)
    {
        sums.AsSpan(0, longest + 1).Clear();
        ends.AsSpan(0, longest + 1).Clear();
        longestBeat = longest;
        count = 0;
    }

    /// <summary>Adds a beat to the mean.</summary>
    /// <param name="beat">Blood volume from its start on.</param>
    public void Add(ReadOnlySpan<double> beat)
    {
        var n = 0;
        for (; n + 1 < beat.Length; n += 2)
        {
            (BloodCourse.TwoAt(sums, n) + BloodCourse.TwoAt(beat, n)).StoreUnsafe(ref sums[0], (nuint)n);
        }

        if (n < beat.Length)
        {
            sums[n] += beat[n];
        }

        ends[beat.Length]++;
        count++;
    }

    /// <summary>All beats have been added. Fewer reach the later points: those that one alone reaches are compared with nothing.</summary>
    public void Weigh()
    {
        var reaching = count - ends[0];
        var weight = 1.0 / (reaching - 1);
        for (compared = 0; compared < longestBeat && reaching > 1; compared++)
        {
            weights[compared] = weight;
            if (ends[compared + 1] > 0)
            {
                reaching -= ends[compared + 1];
                weight = 1.0 / (reaching - 1);
            }
        }
    }

    /// <summary>Correlation of a beat that was added with the mean of the others, −1 to 1.</summary>
    /// <param name="beat">As it was added.</param>
    public double Of(ReadOnlySpan<double> beat)
    {
        beat = beat[..Math.Min(beat.Length, compared)];
        Vector128<double> owns = default, means = default, ownSquares = default, products = default, meanSquares = default;
        var pairs = beat.Length / 2 * 2;
        for (var n = 0; n < pairs; n += 2)
        {
            var own = BloodCourse.TwoAt(beat, n);
            var mean = (BloodCourse.TwoAt(sums, n) - own) * BloodCourse.TwoAt(weights, n);
            owns += own;
            means += mean;
            ownSquares = Vector128.FusedMultiplyAdd(own, own, ownSquares);
            products = Vector128.FusedMultiplyAdd(own, mean, products);
            meanSquares = Vector128.FusedMultiplyAdd(mean, mean, meanSquares);
        }

        if (pairs < beat.Length)
        {
            var own = Vector128.CreateScalar(beat[pairs]);
            var mean = Vector128.CreateScalar((sums[pairs] - beat[pairs]) * weights[pairs]);
            owns += own;
            means += mean;
            ownSquares = Vector128.FusedMultiplyAdd(own, own, ownSquares);
            products = Vector128.FusedMultiplyAdd(own, mean, products);
            meanSquares = Vector128.FusedMultiplyAdd(mean, mean, meanSquares);
        }

        return Correlation(beat.Length, Vector128.Sum(owns), Vector128.Sum(means), Vector128.Sum(ownSquares), Vector128.Sum(products), Vector128.Sum(meanSquares));
    }

    private static double Correlation(int count, double a, double b, double aa, double ab, double bb)
    {
        var power = (aa - (a * a / count)) * (bb - (b * b / count));
        return count > 0 && power > 0 ? (ab - (a * b / count)) / Math.Sqrt(power) : 0;
    }
}
