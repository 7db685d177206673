namespace PulseStream.Signal;

/// <summary>
/// Tells weak beats from second waves. A rise a third as steep as a normal one is a beat. A weaker one is a beat too where
/// the other beats fall at that delay: a beat that comes early rises from the flank of the one before, a second wave comes
/// with every beat.
/// </summary>
internal sealed class WeakRises(double binRateHz)
{
    // Between a second wave, which hardly rises after smoothing, and the early beats of bigeminy, which rise 0.4 times as
    // steeply as full ones and more.
    private const double WeakestShare = 0.36;

    // Where the window ends within a beat the slow fit bends it: at 35 a minute what it makes rises 0.43 times as steeply.
    // A true beat is seen whole a second later.
    private const double WeakestEndShare = 0.5;
    private const double EndSeconds = 0.45;

    // Less than this is a ripple, whatever the other beats do.
    private const double RippleShare = 0.12;

    // A normal beat stands in the upper quartile even where half of them are weak, as in bigeminy.
    private const double NormalQuantile = 0.75;

    // Beats that have to show what usually comes at a delay.
    private const int LeastOthers = 3;
    private const double ClearSeconds = 0.1;
    private readonly int end = (int)Math.Ceiling(EndSeconds * binRateHz);
    private readonly int clear = Math.Max(1, (int)(ClearSeconds * binRateHz));
    private readonly double[] sorted = new double[64];
    private readonly bool[] isStrong = new bool[64];

    /// <summary>Drops what is no beat; the count of what is left at the start of <paramref name="rises"/>.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order; 64 at most.</param>
    public int Drop(ReadOnlySpan<double> slopes, Span<double> rises)
    {
        if (rises.IsEmpty)
        {
            return 0;
        }

        var normal = NormalSlope(slopes, rises);
        for (var k = 0; k < rises.Length; k++)
        {
            var isAtEnd = rises[k] < end || rises[k] >= slopes.Length - end;
            isStrong[k] = slopes[(int)rises[k]] >= (isAtEnd ? WeakestEndShare : WeakestShare) * normal;
        }

        var left = 0;
        for (var k = 0; k < rises.Length; k++)
        {
            if (isStrong[k] || IsEarlyBeat(slopes, rises, k, normal))
            {
                sorted[left++] = rises[k];
            }
        }

        sorted.AsSpan(0, left).CopyTo(rises);
        return left;
    }

    private double NormalSlope(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises)
    {
        for (var k = 0; k < rises.Length; k++)
        {
            sorted[k] = slopes[(int)rises[k]];
        }

        Array.Sort(sorted, 0, rises.Length);
        return sorted[(int)Math.Ceiling(NormalQuantile * (rises.Length - 1))];
    }

    private bool IsEarlyBeat(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int k, double normal)
    {
        var slope = slopes[(int)rises[k]];
        if (!(slope >= RippleShare * normal) || k == 0 || !isStrong[k - 1])
        {
            return false;
        }

        var delay = (int)rises[k] - (int)rises[k - 1];
        return slope - UsualSlope(slopes, rises, k - 1, delay) >= WeakestShare * normal;
    }

    // Median over the other strong beats that are alone for so long; infinite where they are too few to tell.
    private double UsualSlope(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int own, int delay)
    {
        Span<double> others = stackalloc double[rises.Length];
        var count = 0;
        for (var j = 0; j < rises.Length; j++)
        {
            var at = (int)rises[j] + delay;
            if (j != own && isStrong[j] && at + clear < NextStrong(rises, j, slopes.Length))
            {
                others[count++] = slopes[at];
            }
        }

        others = others[..count];
        others.Sort();
        return count < LeastOthers ? double.PositiveInfinity : others[count / 2];
    }

    private double NextStrong(ReadOnlySpan<double> rises, int j, int end)
    {
        for (var n = j + 1; n < rises.Length; n++)
        {
            if (isStrong[n])
            {
                return rises[n];
            }
        }

        return end;
    }
}
