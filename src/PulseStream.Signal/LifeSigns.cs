namespace PulseStream.Signal;

/// <summary>Measures what tells a living pulse from something that swings: how unsteady its wave is, and what breathes beside it.</summary>
internal sealed class LifeSigns(WindowRoom room)
{
    private readonly SignalDesign design = room.Design;
    private readonly SteadyWave steady = room.Steady;

    /// <summary>What three harmonics of one steady rate leave of a wave, over the wave; NaN where the window is too short.</summary>
    /// <remarks>Where the lights agree in a short window alone, infrared is asked for a longer time. While there is none, many turns tell as much.</remarks>
    /// <param name="bins">The newest bins.</param>
    /// <param name="window">The window, slow part, lines and movement removed.</param>
    /// <param name="spare">Room for another window.</param>
    /// <param name="fit">What was read from it.</param>
    /// <param name="removed">What was removed from it as slow.</param>
    /// <param name="wave">Its period, s, and the skewness of its slope.</param>
    public double UnsteadyShare(SmoothedBins bins, ReadOnlySpan<double> window, Span<double> spare, in RatioFit fit, SlowBasis removed, (double PeriodSeconds, double FrontSteepness) wave)
    {
        var isLong = fit.WindowSeconds >= design.Options.SteadinessWindowSeconds;
        if (!isLong && bins.Count >= design.WindowBins(design.Options.SteadinessWindowSeconds))
        {
            var longer = design.SlowOf(design.Options.SteadinessWindowSeconds);
            return steady.UnsteadyShare(WithLines(bins, longer, spare), longer, wave.PeriodSeconds, wave.FrontSteepness);
        }

        return isLong || fit.WindowSeconds >= design.Options.SteadinessTurns * wave.PeriodSeconds
            ? steady.UnsteadyShare(fit.Lines > 0 ? WithLines(bins, removed, spare) : window, removed, wave.PeriodSeconds, wave.FrontSteepness)
            : double.NaN;
    }

    /// <summary>What breathes beside the wave, over the wave, root mean squares.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="fit">What was read from them.</param>
    /// <param name="spare">Room for another window.</param>
    public double BreathingShare(SmoothedBins bins, in RatioFit fit, Span<double> spare)
    {
        var window = spare[..(2 * design.WindowBins(fit.WindowSeconds))];
        bins.CopyNewest(window);
        return design.BreathingOf(fit.WindowSeconds).SizeIn(window) / fit.PulseSize;
    }

    // A line may have been a harmonic of the wave that reaches either light in another mixture.
    private static ReadOnlySpan<double> WithLines(SmoothedBins bins, SlowBasis removed, Span<double> spare)
    {
        var whole = spare[..(2 * removed.Length)];
        bins.CopyNewest(whole);
        removed.Remove(whole);
        return whole;
    }
}
