namespace PulseStream.Signal;

/// <summary>Where samples were missing for long enough to hide the front of a beat, and a straight line stands instead.</summary>
internal sealed class BridgedGaps(double binRateHz)
{
    // The line that bridges a gap bends the light at both its ends: what rises there is no front.
    private const double BentSeconds = 0.1;

    // As many as eight seconds hold.
    private const int MostGaps = 64;
    private readonly (long From, long To)[] gaps = new (long, long)[MostGaps];
    private int count;
    private int next;

    /// <summary>Adds a gap.</summary>
    /// <param name="from">The last bin before it.</param>
    /// <param name="to">The first bin behind it.</param>
    public void Add(long from, long to)
    {
        gaps[next] = (from, to);
        next = (next + 1) % MostGaps;
        count = Math.Min(count + 1, MostGaps);
    }

    /// <summary>Whether any gap lies, wholly or in part, between two places in bins.</summary>
    public bool AnyBetween(double from, double to)
    {
        foreach (var gap in gaps.AsSpan(0, count))
        {
            if (gap.From < to && gap.To > from)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether what rises at a place may be the bend at a gap's end, or the bridge itself.</summary>
    public bool BendAt(double at) => AnyBetween(at - (BentSeconds * binRateHz), at + (BentSeconds * binRateHz));

    /// <summary>How many bins behind a place are missing.</summary>
    /// <param name="from">The place, bins.</param>
    public long MissingSince(long from)
    {
        var missing = 0L;
        foreach (var gap in gaps.AsSpan(0, count))
        {
            missing += Math.Max(0, gap.To - Math.Max(gap.From, from) - 1);
        }

        return missing;
    }

    /// <summary>Forgets all gaps.</summary>
    public void Clear()
    {
        count = 0;
        next = 0;
    }
}
