namespace PulseStream.Signal;

/// <summary>
/// Tells weak beats from second waves. A rise nearly as steep as a normal one is a beat; a weaker one where it comes later
/// than second waves do, or where the other beats fall at that delay: a beat that comes early rises from the flank of the
/// one before, a second wave comes with every beat.
/// </summary>
internal sealed class WeakRises(double binRateHz)
{
    // Second waves reach half the front's steepness, with noise somewhat more.
    private const double StrongShare = 0.6;

    // So much steeper than the other beats at that delay is no second wave.
    private const double WeakestShare = 0.36;

    // Behind the second wave nothing rises but a beat: those of bigeminy are found with 0.33 of the full ones' steepness.
    private const double LateShare = 0.3;

    // The valve closes some 0.3 s after it opens, at a slow pulse somewhat later (common practice); its wave is here by then.
    private const double LatestSecondWaveSeconds = 0.36;

    // Where the window ends within a beat the slow fit bends it: at 35 a minute what it makes rises 0.43 times as steeply.
    // A true beat is seen whole a second later.
    private const double EndSeconds = 0.45;

    // Less than this is a ripple, whatever the other beats do.
    private const double RippleShare = 0.12;

    // So long holds two full beats of bigeminy and of the slowest pulse, and a pulse that grows or shrinks has hardly moved.
    // The second steepest rise in it is a full beat even where one jerk is steeper than all.
    private const double NearSeconds = 5;

    // Beats that have to show what usually comes at a delay.
    private const int LeastOthers = 3;
    private const double ClearSeconds = 0.1;
    private readonly int end = (int)Math.Ceiling(EndSeconds * binRateHz);
    private readonly int clear = Math.Max(1, (int)(ClearSeconds * binRateHz));
    private readonly double near = NearSeconds * binRateHz;
    private readonly double latestSecondWave = LatestSecondWaveSeconds * binRateHz;
    private readonly double[] beats = new double[64];
    private readonly double[] normals = new double[64];
    private readonly bool[] isStrong = new bool[64];

    /// <summary>Drops what is no beat; the count of what is left at the start of <paramref name="rises"/>.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order; 64 at most.</param>
    public int Drop(ReadOnlySpan<double> slopes, Span<double> rises)
    {
        MarkStrong(slopes, rises);
        var left = 0;
        var before = -1;
        for (var k = 0; k < rises.Length; k++)
        {
            if (isStrong[k] || (before >= 0 && IsEarlyBeat(slopes, rises, before, k)))
            {
                beats[left++] = rises[k];
            }

            before = isStrong[k] ? k : before;
        }

        beats.AsSpan(0, left).CopyTo(rises);
        return left;
    }

    private double NormalSlope(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, double rise)
    {
        var from = Math.Max(0, Math.Min(rise - (near / 2), slopes.Length - near));
        double first = 0, second = 0;
        foreach (var other in rises)
        {
            if (other >= from && other <= from + near)
            {
                var slope = slopes[(int)other];
                second = Math.Max(second, Math.Min(first, slope));
                first = Math.Max(first, slope);
            }
        }

        return second > 0 ? second : first;
    }

    private void MarkStrong(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises)
    {
        var last = double.NegativeInfinity;
        for (var k = 0; k < rises.Length; k++)
        {
            normals[k] = NormalSlope(slopes, rises, rises[k]);
            var isLate = rises[k] - last >= latestSecondWave && rises[k] >= end && rises[k] < slopes.Length - end;
            isStrong[k] = slopes[(int)rises[k]] >= (isLate ? LateShare : StrongShare) * normals[k];
            last = isStrong[k] ? rises[k] : last;
        }
    }

    private bool IsEarlyBeat(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int before, int k)
    {
        var slope = slopes[(int)rises[k]];
        var delay = (int)rises[k] - (int)rises[before];
        return slope >= RippleShare * normals[k]
            && slope - UsualSlope(slopes, rises, before, delay) >= WeakestShare * normals[k];
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

    private double NextStrong(ReadOnlySpan<double> rises, int j, int length)
    {
        for (var n = j + 1; n < rises.Length; n++)
        {
            if (isStrong[n])
            {
                return rises[n];
            }
        }

        return length;
    }
}
