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
        var n = Math.Max(0, (int)(strong - reach));
        var end = (int)next;
        double volume = 0, footBefore = 0, peak = 0;
        for (; n < end && n < strong; n++)
        {
            volume += slopes[n];
            footBefore = Math.Min(footBefore, volume);
        }

        var low = volume;
        for (; n < end && n < weak; n++)
        {
            volume += slopes[n];
            low = volume >= peak ? volume : Math.Min(low, volume);
            peak = Math.Max(peak, volume);
        }

        for (; n < end && n <= weak; n++)
        {
            volume += slopes[n];
        }

        var footBehind = volume;
        for (; n < end; n++)
        {
            volume += slopes[n];
            footBehind = Math.Min(footBehind, volume);
        }

        var foot = 0.5 * (footBefore + footBehind);
        return (low - foot) / (peak - foot);
    }
}
