namespace PulseStream.Signal;

/// <summary>
/// Whether more waves come behind the beats that were counted than beats have: each rise of the blood is a beat or a part of one.
/// A front has two waves behind it at most, where the aortic valve closes and where the end of the arteries throws the pulse
/// back; with a third, one of them is a beat. Where long intervals come in turn with short ones, both beats have the same waves.
/// </summary>
internal static class UncountedWaves
{
    // Less of the front before it is a ripple. Nearer than this to a front it belongs to that.
    private const double RippleShare = 0.12;
    private const double OwnFrontSeconds = 0.1;

    // Those of most beats count: noise adds one here and hides one there.
    private const int LeastIntervals = 3;
    private const int MostWavesOfABeat = 2;
    private const double MostShare = 0.75;

    // Breathing moves intervals by less than a seventh. An interval that hides a beat is about twice as long as the others; before the
    // shorter are nearly over, both show what is behind a front.
    private const double UnlikeShare = 1.15;
    private const double HidingShare = 1.8;
    private const double SeenShare = 0.75;

    /// <summary>Looks for them in a window.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Steepest rises of the beats that were counted, bins, in order; 64 at most.</param>
    /// <param name="binRateHz">Bins a second.</param>
    public static bool AreIn(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, double binRateHz)
    {
        if (rises.Length <= LeastIntervals)
        {
            return false;
        }

        var mean = (rises[^1] - rises[0]) / (rises.Length - 1);
        var own = OwnFrontSeconds * binRateHz;
        var (longs, shorts, longWaved, longOnes, shortWaved) = (0, 0, 0, 0, 0);
        double longSum = 0, shortSum = 0;
        for (var k = 1; k < rises.Length; k++)
        {
            var interval = rises[k] - rises[k - 1];
            var isShort = interval * UnlikeShare < mean;
            (longs, longSum) = isShort ? (longs, longSum) : (longs + 1, longSum + interval);
            (shorts, shortSum) = isShort ? (shorts + 1, shortSum + interval) : (shorts, shortSum);
        }

        var seen = shorts >= LeastIntervals ? SeenShare * shortSum / shorts : 0;
        var longPlain = 0;
        for (var k = 1; k < rises.Length; k++)
        {
            // Most windows are told by their first few beats.
            if (seen == 0 && longPlain > (1 - MostShare) * longs)
            {
                return false;
            }

            var isShort = (rises[k] - rises[k - 1]) * UnlikeShare < mean;
            var isWaved = !isShort && WavesBetween(slopes, rises[k - 1], own, rises[k] - own) > MostWavesOfABeat;
            longWaved += isWaved ? 1 : 0;
            longPlain += isShort || isWaved ? 0 : 1;
            var hasWave = seen > 0 && WavesBetween(slopes, rises[k - 1], own, rises[k - 1] + seen) > 0;
            longOnes += !isShort && hasWave ? 1 : 0;
            shortWaved += isShort && hasWave ? 1 : 0;
        }

        return (longs >= LeastIntervals && longWaved >= MostShare * longs)
            || (longs >= LeastIntervals && shorts >= LeastIntervals
                && longSum * shorts >= HidingShare * shortSum * longs
                && longOnes >= MostShare * longs && shortWaved <= (1 - MostShare) * shorts);
    }

    private static int WavesBetween(ReadOnlySpan<double> slopes, double front, double own, double to)
    {
        var least = RippleShare * slopes[(int)Math.Round(front)];
        var start = (int)Math.Ceiling(front + own);
        var end = Math.Min((int)to + 1, slopes.Length - 1);
        var count = 0;
        for (var three = end > start ? slopes[(start - 1)..(end + 1)] : []; three.Length > 2; three = three[1..])
        {
            count += three[1] >= least && three[1] > three[2] && three[1] >= three[0] ? 1 : 0;
        }

        return count;
    }
}
