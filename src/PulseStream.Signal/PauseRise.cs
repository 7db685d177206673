namespace PulseStream.Signal;

/// <summary>
/// The early beat before a pause. A heart that beats early waits longer afterwards, nearly until the beat after the next is due:
/// what rises in such a pause, where nothing rises behind the other beats, is that early beat, however little blood it moved.
/// </summary>
internal sealed class PauseRise(double binRateHz)
{
    // Early beat and pause together take 1.8 intervals and more; breathing makes no interval so much longer than the others.
    private const double PauseShare = 1.6;

    // A heart that waits so long after every second or third beat keeps a rhythm of its own: what was found is all of it.
    private const double MostPausesShare = 0.4;

    // A beat that moves less blood is a ripple; what the second waves of other beats reach at that delay is one too.
    private const double LeastShare = 0.1;
    private const double OverUsual = 2;

    // Beats that have to show what usually comes at a delay, which moves by so much.
    private const int LeastOthers = 3;
    private const double SameDelaySeconds = 0.06;

    // Sooner than this no heart beats again; later, the rest of the pause is none.
    private const double SoonestSeconds = 0.3;
    private const double LatestShare = 0.6;
    private readonly int sameDelay = Math.Max(1, (int)(SameDelaySeconds * binRateHz));

    /// <summary>The rise between two full beats that is an early beat; −1 where there is none, or no pause.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order.</param>
    /// <param name="isFull">Which of them are full beats.</param>
    /// <param name="before">Number of the full beat before the pause.</param>
    /// <param name="intervalBins">The usual interval, bins.</param>
    public int Find(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, ReadOnlySpan<bool> isFull, int before, double intervalBins)
    {
        var next = NextFull(isFull, before, rises.Length);
        var pause = PauseShare * intervalBins;
        if (next == rises.Length || rises[next] - rises[before] < pause || !AreRare(rises, isFull, pause))
        {
            return -1;
        }

        var steepest = -1;
        for (var k = before + 1; k < next; k++)
        {
            var delay = rises[k] - rises[before];
            var isDue = delay >= SoonestSeconds * binRateHz && delay <= LatestShare * (rises[next] - rises[before]);
            steepest = isDue && (steepest < 0 || slopes[(int)rises[k]] > slopes[(int)rises[steepest]]) ? k : steepest;
        }

        return steepest >= 0 && IsUnusual(slopes, rises, isFull, before, steepest) ? steepest : -1;
    }

    private static bool AreRare(ReadOnlySpan<double> rises, ReadOnlySpan<bool> isFull, double pause)
    {
        int intervals = 0, pauses = 0;
        for (var k = NextFull(isFull, -1, rises.Length); k < rises.Length;)
        {
            var next = NextFull(isFull, k, rises.Length);
            intervals += next < rises.Length ? 1 : 0;
            pauses += next < rises.Length && rises[next] - rises[k] >= pause ? 1 : 0;
            k = next;
        }

        return pauses <= MostPausesShare * intervals;
    }

    private bool IsUnusual(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, ReadOnlySpan<bool> isFull, int before, int k)
    {
        var delay = (int)(rises[k] - rises[before]);
        Span<double> others = stackalloc double[rises.Length];
        Span<double> full = stackalloc double[rises.Length];
        int count = 0, fullCount = 0;
        for (var j = 0; j < rises.Length; j++)
        {
            if (!isFull[j])
            {
                continue;
            }

            full[fullCount++] = slopes[(int)rises[j]];
            var next = NextFull(isFull, j, rises.Length);
            var at = (int)rises[j] + delay;
            if (j != before && next < rises.Length && at + (2 * sameDelay) < rises[next])
            {
                others[count++] = Steepest(slopes[(at - sameDelay)..(at + sameDelay + 1)]);
            }
        }

        var own = slopes[(int)rises[k]];
        return count >= LeastOthers
            && own >= LeastShare * Median(full[..fullCount])
            && own >= OverUsual * Median(others[..count]);
    }

    private static int NextFull(ReadOnlySpan<bool> isFull, int k, int length)
    {
        var next = k + 1;
        while (next < length && !isFull[next])
        {
            next++;
        }

        return next;
    }

    private static double Steepest(ReadOnlySpan<double> slopes)
    {
        var steepest = slopes[0];
        foreach (var slope in slopes)
        {
            steepest = Math.Max(steepest, slope);
        }

        return steepest;
    }

    private static double Median(Span<double> values)
    {
        values.Sort();
        return values[values.Length / 2];
    }
}
