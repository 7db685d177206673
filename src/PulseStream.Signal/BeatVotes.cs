namespace PulseStream.Signal;

/// <summary>
/// How many of the windows that hold a beat have found it. Weak rises are judged by the beats around them, which differ from
/// window to window: where windows count the same seconds differently, nobody knows how many beats there were.
/// </summary>
internal sealed class BeatVotes(double binRateHz)
{
    // 220 beats a minute over the longest window, twice over.
    private const int MostBeats = 64;
    private const double KeptSeconds = 9;

    // Nearer to its ends a window does not judge weak rises; the newest have to be known on both sides.
    private const double OldestEdgeSeconds = 0.5;
    private const double NewestEdgeSeconds = 0.7;

    // A beat moves by less than this from window to window; two beats are never so close.
    private const double SameBeatSeconds = 0.15;
    private const double AtEdgeSeconds = 0.1;

    // One window in six may see a wave that was none, or overlook a beat; two of eight are not sure.
    private const double DoubtShare = 0.25;
    private readonly double[] places = new double[MostBeats];
    private readonly int[] found = new int[MostBeats];
    private readonly int[] missed = new int[MostBeats];
    private int count;
    private int windowsInRow;
    private double lastTo;

    /// <summary>Forgets all beats.</summary>
    public void Restart()
    {
        count = 0;
        windowsInRow = 0;
    }

    /// <summary>A second without a window that can be compared with those before.</summary>
    public void Skip() => windowsInRow = 0;

    /// <summary>Hears the next second's window: a whole one, from which nothing was taken away.</summary>
    /// <param name="rises">Steepest rises, bins from its start.</param>
    /// <param name="start">Its first bin.</param>
    /// <param name="end">Just past its last bin.</param>
    public void Take(ReadOnlySpan<double> rises, double start, double end)
    {
        windowsInRow++;
        Forget(end - (KeptSeconds * binRateHz));
        var from = start + (OldestEdgeSeconds * binRateHz);
        var to = end - (NewestEdgeSeconds * binRateHz);
        Span<bool> isKnown = stackalloc bool[rises.Length];
        isKnown.Clear();
        for (var k = 0; k < count; k++)
        {
            var same = SameAs(places[k] - start, rises, isKnown);
            if (same >= 0)
            {
                isKnown[same] = true;
            }

            if (places[k] > from && places[k] < to)
            {
                found[k] += same >= 0 ? 1 : 0;
                missed[k] += same >= 0 ? 0 : 1;
                places[k] = same >= 0 ? start + rises[same] : places[k];
            }
        }

        AddNew(rises, isKnown, start, from, to);
        lastTo = to - (AtEdgeSeconds * binRateHz);
    }

    /// <summary>Whether windows differ over a beat behind a place; what may be bent by a gap is no beat of theirs.</summary>
    public bool DifferBehind(double from, BridgedGaps gaps)
    {
        var differ = false;
        for (var k = 0; k < count; k++)
        {
            var minority = Math.Min(found[k], missed[k]);
            differ |= places[k] > from && minority > 0 && minority >= DoubtShare * (found[k] + missed[k]) && !gaps.BendAt(places[k]);
        }

        return differ;
    }

    private int SameAs(double place, ReadOnlySpan<double> rises, ReadOnlySpan<bool> isKnown)
    {
        var nearest = SameBeatSeconds * binRateHz;
        var same = -1;
        for (var k = 0; k < rises.Length && rises[k] - place < nearest; k++)
        {
            var distance = Math.Abs(rises[k] - place);
            if (distance < nearest && !isKnown[k])
            {
                nearest = distance;
                same = k;
            }
        }

        return same;
    }

    // The windows before held a new one's place too and did not find it there.
    private void AddNew(ReadOnlySpan<double> rises, ReadOnlySpan<bool> isKnown, double start, double from, double to)
    {
        for (var k = 0; k < rises.Length && count < MostBeats; k++)
        {
            var place = start + rises[k];
            if (!isKnown[k] && place > from && place < to)
            {
                places[count] = place;
                found[count] = 1;
                missed[count++] = place < lastTo ? Math.Min(1 + (int)((lastTo - place) / binRateHz), windowsInRow - 1) : 0;
            }
        }
    }

    private void Forget(double before)
    {
        var left = 0;
        for (var k = 0; k < count; k++)
        {
            if (places[k] >= before)
            {
                (places[left], found[left], missed[left]) = (places[k], found[k], missed[k]);
                left++;
            }
        }

        count = left;
    }
}
