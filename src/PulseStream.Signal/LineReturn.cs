namespace PulseStream.Signal;

/// <summary>Leaves the taken window without its lines alone, and gives it back what of its pulse went with them where that can be told.</summary>
/// <param name="room">Where windows are measured.</param>
/// <param name="loaded">Where they are loaded.</param>
/// <param name="taken">The window that was taken.</param>
/// <param name="calm">The calm pulse.</param>
internal sealed class LineReturn(WindowRoom room, LoadedWindow loaded, TakenWindow taken, PulseTemplate calm)
{
    // Half of the way to the second wave.
    private const double FirstWaveDistance = 0.5;
    private readonly SignalDesign design = room.Design;
    private readonly LineRemover lines = room.Lines;
    private readonly BeatFinder finder = room.Finder;
    private readonly LampMixture mixture = new();

    /// <summary>Puts the pulse back, where room light's mixture tells it from the line. Where the window repeats worse with its pulse put back, the line was something else.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="intervalSoFarSeconds">Interval of the beats so far, s; NaN where unknown.</param>
    /// <returns>What was told of the window, of what is left in it now.</returns>
    public RatioFit PutPulseBack(SmoothedBins bins, double intervalSoFarSeconds)
    {
        var fit = taken.Fit;
        var without = LeaveWithoutLines(bins, fit, intervalSoFarSeconds);
        var whole = loaded.Pairs;
        var (periodicity, period, front) = (finder.Periodicity, finder.PeriodSeconds, FrontOf(without));
        var isOneLine = LinePart.IsOneLine(taken.LinesHz, fit.WindowSeconds, period);
        fit = fit with
        {
            PulseSize = LinePart.SizeOf(without),
            OtherLightSize = fit.IsRoomLight ? 0 : LinePart.AmplitudeBesidePulse(whole, without, fit.Ratio),
            IsOneLine = isOneLine,
            IsPureLine = isOneLine && fit.LinesExplain >= design.Options.PureLineShare,
        };
        var mix = fit.IsPureLine ? MixOf(bins, fit) : LinePart.MixOfRoomLight(bins.Last);
        if (!LinePart.IsTold(fit.Ratio, mix))
        {
            return fit;
        }

        var least = LinePart.IsOneMixtureOtherThan(whole, without, mix) ? periodicity : LinePart.LeastPeriodicityShare * periodicity;
        var removed = LinePart.AmplitudeOf(whole, without);
        var amplitude = LinePart.LeavePulse(whole, without, fit.Ratio, mix);
        finder.Find(whole, intervalSoFarSeconds);
        var isStrange = !LinePart.IsMultiple(finder.PeriodSeconds, period) || !IsLikely(whole, fit.LineHz, fit.PulseSize, front);
        if (finder.Periodicity < least || (isStrange && (fit.IsRoomLight || fit.IsPureLine || IsBetweenHarmonics(fit, period))))
        {
            return fit with { RoomLightSize = fit.IsRoomLight ? removed : 0 };
        }

        whole.CopyTo(taken.Room);
        return fit with { PulseSize = LinePart.SizeOf(whole), RoomLightSize = amplitude, LightMix = fit.IsPureLine ? mix : double.NaN };
    }

    /// <summary>Skewness of the slope of a window's pulse.</summary>
    /// <param name="window">Infrared and red in turn.</param>
    public double FrontOf(ReadOnlySpan<double> window)
    {
        finder.Course.Take(window);
        return WaveShape.Of(finder.Course, 0, design.BinRateHz).FrontSteepness;
    }

    // Light of as many counts in either channel has a mixture that needs no measuring, unless a wave of the pulse only made it look so.
    private double MixOf(SmoothedBins bins, in RatioFit fit)
    {
        const double sameShare = 0.25;
        var measured = mixture.Of(loaded.Pairs, taken.Pairs, fit.Ratio);
        var equal = LinePart.MixOfRoomLight(bins.Last);
        return fit.IsRoomLight && Math.Abs(measured - equal) < sameShare * equal ? equal : measured;
    }

    // Leaves the window as it was loaded, and in 'taken' the same without lines, but with what rides on the pulse. With its second
    // wave a lamp makes a slow pulse look fast: where it repeats worse, its first wave has gone with the baseline.
    private Span<double> LeaveWithoutLines(SmoothedBins bins, in RatioFit fit, double intervalSoFarSeconds)
    {
        var edge = taken.Edge;
        var without = LeaveWithoutLines(bins, fit, edge, intervalSoFarSeconds);
        if (edge == SlowEdge.OfAnyPulse)
        {
            return without;
        }

        var periodicity = finder.Periodicity;
        without = LeaveWithoutLines(bins, fit, SlowEdge.OfAnyPulse, intervalSoFarSeconds);
        return finder.Periodicity > periodicity ? without : LeaveWithoutLines(bins, fit, edge, intervalSoFarSeconds);
    }

    private Span<double> LeaveWithoutLines(SmoothedBins bins, in RatioFit fit, SlowEdge edge, double intervalSoFarSeconds)
    {
        loaded.Load(bins, fit.WindowSeconds, edge);
        var without = taken.Pairs;
        loaded.Pairs.CopyTo(without);
        taken.Edge = edge;
        if (taken.AreLinesAdded)
        {
            loaded.WeighLines(bins);
        }

        lines.RemoveAlone(without, taken.LinesHz, fit.IsWideLine);
        finder.Find(without, intervalSoFarSeconds);
        return without;
    }

    // Light that reaches the channels in another mixture or phase than told comes back with the pulse and bends it.
    private bool IsLikely(ReadOnlySpan<double> whole, double lineHz, double sizeWithout, double frontWithout) =>
        calm.IsKnown
            ? LinePart.SizeOf(whole) < design.Options.LargestPutBack * calm.Size && FrontOf(whole) >= design.Options.LeastFrontShare * calm.FrontSteepness
            : LinePart.SizeOf(whole) < LargestPutBack(lineHz) * sizeWithout && FrontOf(whole) > frontWithout;

    // The first wave is most of a pulse, and all of it may have gone with the line. To be asked once the window has been looked at.
    private double LargestPutBack(double lineHz) =>
        Math.Abs((lineHz * finder.PeriodSeconds) - 1) < FirstWaveDistance ? design.Options.LargestFirstWavePutBack : design.Options.LargestPutBack;

    // What moves with the heart, as veins do, lies on the pulse's harmonics: what it leaves of the pulse says nothing of blood.
    private bool IsBetweenHarmonics(in RatioFit fit, double periodSeconds)
    {
        const double resolutions = 1.5;
        var harmonic = fit.LineHz * (calm.IsKnown ? calm.PeriodBins / design.BinRateHz : periodSeconds);
        return Math.Abs(harmonic - Math.Round(harmonic)) > resolutions * periodSeconds / fit.WindowSeconds;
    }
}
