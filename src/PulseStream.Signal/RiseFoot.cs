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
        var from = Math.Max(0, (int)(strong - reach));
        double volume = 0, footBefore = 0, peak = 0, low = 0, footBehind = 0;
        for (var n = from; n < (int)next; n++)
        {
            volume += slopes[n];
            footBefore = n < strong ? Math.Min(footBefore, volume) : footBefore;
            peak = n >= strong && n < weak ? Math.Max(peak, volume) : peak;
            low = n < strong ? volume : n < weak ? (volume >= peak ? volume : Math.Min(low, volume)) : low;
            footBehind = n <= weak ? volume : Math.Min(footBehind, volume);
        }

        var foot = 0.5 * (footBefore + footBehind);
        return (low - foot) / (peak - foot);
    }
}
