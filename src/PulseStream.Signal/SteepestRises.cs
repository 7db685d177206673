using System.Numerics;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Finds where blood rises more steeply than anywhere near.</summary>
/// <param name="edge">Bins at the oldest end that are not looked at.</param>
/// <param name="newestEdge">The same at the newest end.</param>
internal sealed class SteepestRises(int edge, int newestEdge)
{
    private readonly int[] candidates = new int[256];

    /// <summary>Finds them in a window.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="reach">How far either way nothing is steeper, bins.</param>
    /// <param name="rises">Room for their bins, in order; no more are found than fit in.</param>
    /// <returns>How many there are.</returns>
    public int Find(Span<double> slopes, double reach, Span<double> rises)
    {
        var candidateCount = Candidates(slopes);
        var count = 0;
        for (var k = 0; k < candidateCount && count < rises.Length; k++)
        {
            if (IsSteepest(slopes, k, candidateCount, reach))
            {
                rises[count++] = candidates[k];
            }
        }

        return count;
    }

    private int Candidates(ReadOnlySpan<double> slopes)
    {
        var count = 0;
        var end = slopes.Length - newestEdge;
        for (var n = edge; n < end && count < candidates.Length - 1; n += 2)
        {
            var own = BloodCourse.TwoAt(slopes, n);
            var isTop = Vector128.GreaterThan(own, BloodCourse.TwoAt(slopes, n + 1))
                & Vector128.GreaterThanOrEqual(own, BloodCourse.TwoAt(slopes, n - 1))
                & Vector128.GreaterThan(own, Vector128<double>.Zero);
            for (var tops = isTop.ExtractMostSignificantBits(); tops != 0; tops &= tops - 1)
            {
                candidates[count++] = n + BitOperations.TrailingZeroCount(tops);
            }
        }

        return count > 0 && candidates[count - 1] >= end ? count - 1 : count;
    }

    private bool IsSteepest(ReadOnlySpan<double> slopes, int k, int count, double reach)
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
}
