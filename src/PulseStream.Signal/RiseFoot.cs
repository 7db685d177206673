namespace PulseStream.Signal;

/// <summary>From where a weak rise comes: the flank of the full beat before it, or as low as full beats do.</summary>
internal static class RiseFoot
{
    /// <summary>Blood volume at its foot, from the feet of the full beats around it, 0, to the crest of the one before, 1.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="strong">Steepest rise of the full beat before it, bins.</param>
    /// <param name="weak">Its own.</param>
    /// <param name="next">That of the full beat behind it.</param>
    /// <param name="reach">From a full front back to its foot, bins.</param>
    public static double ShareOf(ReadOnlySpan<double> slopes, double strong, double weak, double next, double reach)
    {
        var end = (int)next;
        var start = Math.Clamp((int)(strong - reach), 0, end);
        var front = Math.Clamp((int)Math.Ceiling(strong), start, end);
        var rise = Math.Clamp((int)Math.Ceiling(weak), front, end);
        var behind = Math.Clamp((int)weak + 1, rise, end);
        double volume = 0, footBefore = 0, peak = 0;
        foreach (var slope in slopes[start..front])
        {
            volume += slope;
            footBefore = double.MinNative(footBefore, volume);
        }

        var low = volume;
        foreach (var slope in slopes[front..rise])
        {
            volume += slope;
            low = volume >= peak ? volume : double.MinNative(low, volume);
            peak = double.MaxNative(peak, volume);
        }

        foreach (var slope in slopes[rise..behind])
        {
            volume += slope;
        }

        var footBehind = volume;
        foreach (var slope in slopes[behind..end])
        {
            volume += slope;
            footBehind = double.MinNative(footBehind, volume);
        }

        var foot = 0.5 * (footBefore + footBehind);
        return (low - foot) / (peak - foot);
    }
}
