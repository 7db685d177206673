namespace PulseStream.Signal;

/// <summary>
/// The beats of the last seconds, through all windows. Each window has the last word on its newest seconds, so that a beat
/// is judged once at the edge and again with beats on both sides; older ones stay although the window may be shorter now.
/// </summary>
internal sealed class BeatTrain
{
    // 220 beats a minute over the longest window and what is kept before it, twice over.
    private const int MostBeats = 96;

    // Two more windows after the first see a beat before it is settled.
    private const double UnsettledSeconds = 2.5;

    // The same beat moves by less than this from window to window; two beats are never so close.
    private const double SameBeatSeconds = 0.2;

    // One interval more than the averaging window, however slow the pulse.
    private const double KeptSeconds = 12;

    // Two pairs and the beat before them. An early beat comes a sixth of an interval early at least, and breathing moves a pair by less than a tenth.
    private const int PairedBeats = 5;
    private const double EarlyShare = 0.42;
    private const double SamePairShare = 0.1;
    private readonly double binRateHz;
    private readonly double[] rises = new double[MostBeats];
    private int count;
    private bool wasCleaned;
    private double soundFrom = double.NegativeInfinity;

    public BeatTrain(double binRateHz)
    {
        this.binRateHz = binRateHz;
        Restart();
    }

    /// <summary>Steepest rises, bins since the recording's start.</summary>
    public ReadOnlySpan<double> Rises => rises.AsSpan(0, count);

    /// <summary>From where on the beats can be believed, bins.</summary>
    public double SoundFrom => soundFrom;

    /// <summary>Forgets all beats.</summary>
    public void Restart()
    {
        count = 0;
        wasCleaned = false;
        soundFrom = double.PositiveInfinity;
    }

    /// <summary>Takes over the beats of the newest window.</summary>
    /// <param name="windowRises">Steepest rises, bins from the window's start.</param>
    /// <param name="start">The window's first bin.</param>
    /// <param name="end">Just past its last bin.</param>
    /// <param name="isSound">Whether what moves in this window is one heart's blood.</param>
    /// <param name="isCleaned">Whether something was taken away from it: the same beat may then be steepest elsewhere than in the window before.</param>
    /// <param name="isWhole">Whether it is the longest and of the wave of the second before: a shorter one was taken because something else moves before it.</param>
    public void Take(ReadOnlySpan<double> windowRises, double start, double end, bool isSound, bool isWhole, bool isCleaned)
    {
        var isContinued = isSound && isWhole && !isCleaned && !wasCleaned && soundFrom <= start;
        wasCleaned = isCleaned;
        var from = isContinued ? end - (UnsettledSeconds * binRateHz) : start;
        soundFrom = !isSound ? double.PositiveInfinity : isContinued ? soundFrom : start;
        Forget(from, end);
        var nearest = SameBeatSeconds * binRateHz;
        foreach (var rise in windowRises)
        {
            var at = start + rise;
            if (at > from - nearest && count < MostBeats && (count == 0 || at > rises[count - 1] + nearest))
            {
                rises[count++] = at;
            }
        }
    }

    /// <summary>Takes over the beat of a pair that is due where it does not show yet; the next window has the last word on it.</summary>
    /// <param name="seenTo">Up to here a beat would have shown.</param>
    /// <param name="end">The end of the second.</param>
    /// <returns>Whether one is due.</returns>
    public bool Expect(double seenTo, double end)
    {
        if (count < PairedBeats || !AreInPairs(rises.AsSpan(count - PairedBeats, PairedBeats)))
        {
            return false;
        }

        var due = (2 * rises[count - 2]) - rises[count - 4];
        if (!(due > seenTo && due < end && count < MostBeats))
        {
            return false;
        }

        rises[count++] = due;
        return true;
    }

    // Short and long in turn, each as long as the one before last: a full beat and an early one, for twice now.
    private static bool AreInPairs(ReadOnlySpan<double> last)
    {
        var pair = last[4] - last[2];
        var isShortLast = last[4] - last[3] < last[3] - last[2];
        var shortest = isShortLast ? last[4] - last[3] : last[3] - last[2];
        return shortest < EarlyShare * pair
            && Math.Abs(last[3] - last[1] - pair) < SamePairShare * pair
            && Math.Abs(last[2] - last[0] - pair) < SamePairShare * pair;
    }

    private void Forget(double from, double end)
    {
        while (count > 0 && rises[count - 1] >= from)
        {
            count--;
        }

        var old = 0;
        while (old < count && rises[old] < end - (KeptSeconds * binRateHz))
        {
            old++;
        }

        rises.AsSpan(old, count - old).CopyTo(rises);
        count -= old;
    }
}
