namespace PulseStream.Signal;

/// <summary>Takes the longest window whose lights agree; where none does, the one, the slow edge and the lines with which they agree best.</summary>
/// <param name="room">Where windows are measured.</param>
/// <param name="hasRed">Whether there are two lights.</param>
/// <param name="loaded">Where they are loaded.</param>
/// <param name="taken">Where the best is left.</param>
internal sealed class WindowChoice(WindowRoom room, bool hasRed, LoadedWindow loaded, TakenWindow taken)
{
    // Three beats, wherever the window falls on them: with fewer none can be compared with two others.
    private const double ComparedIntervals = 3.2;

    // Below it a weak pulse's period may be breathing's.
    private const double SurePeriodicity = 0.9;
    private readonly SignalDesign design = room.Design;
    private readonly BeatFinder finder = room.Finder;

    /// <summary>Whether the lights agree as well as anything could be better for.</summary>
    /// <param name="fit">What was told of a window.</param>
    public bool IsCoherent(in RatioFit fit) =>
        !hasRed || (fit.Disagreement <= design.Options.CoherentDisagreement && (fit.Lines == 0 || fit.StandardError <= design.Options.LargestErrorBesideLines));

    /// <summary>The longest window that the bins fill, s; less than the shortest where they fill none. The first ones behind a restart may begin with the way that the light came back, in which the pulse is nothing.</summary>
    /// <param name="bins">The newest bins.</param>
    public int LongestFilled(SmoothedBins bins)
    {
        var shortest = design.Options.ShortestWindowSeconds;
        for (var seconds = design.Options.LongestWindowSeconds; seconds >= shortest; seconds--)
        {
            if (bins.Count >= design.WindowBins(seconds))
            {
                return seconds < shortest + 2 && bins.HasJerk(seconds, seconds - 1) ? seconds - 1 : seconds;
            }
        }

        return 0;
    }

    /// <summary>Takes a window.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="longest">The longest window that they fill, s.</param>
    /// <param name="intervalSoFarSeconds">Interval of the beats so far, s; NaN where unknown.</param>
    public void Take(SmoothedBins bins, int longest, double intervalSoFarSeconds)
    {
        var shortest = design.Options.ShortestWindowSeconds;
        taken.Restart();
        for (var seconds = longest; seconds >= shortest; seconds -= 2)
        {
            if (taken.Fit.WindowSeconds > 0 && ReceivedSeconds(bins, seconds) < ComparedIntervals * intervalSoFarSeconds)
            {
                return;
            }

            if (seconds - 2 >= shortest && bins.HasJerk(seconds, shortest))
            {
                continue;
            }

            TakeOf(bins, seconds, intervalSoFarSeconds);
            if (IsCoherent(taken.Fit))
            {
                return;
            }
        }
    }

    // No beat is seen where a straight line stands, but it agrees: a short window that is mostly bridge would be the best.
    private double ReceivedSeconds(SmoothedBins bins, int seconds) =>
        seconds - (bins.Gaps.MissingSince(bins.NewestBin - design.WindowBins(seconds)) / design.BinRateHz);

    private void TakeOf(SmoothedBins bins, int seconds, double intervalSoFarSeconds)
    {
        var fit = loaded.Load(bins, seconds, SlowEdge.OfAnyPulse);
        if (hasRed && fit.Disagreement <= design.Options.CoherentDisagreement && fit.StandardError > design.Options.LeastErrorOfNoise)
        {
            loaded.RemoveLineFromNoise(bins, ref fit);
        }

        taken.TakeBetter(loaded, fit);
        if (IsCoherent(taken.Fit))
        {
            TakeWithoutBreathing(bins, seconds, intervalSoFarSeconds);
            return;
        }

        var rate = taken.Fit.IsWithoutFirstWave ? 0 : RateOf(taken.Pairs, intervalSoFarSeconds);
        var edge = design.EdgeOf(rate);
        if (edge != SlowEdge.OfAnyPulse)
        {
            fit = loaded.Load(bins, seconds, edge);
            taken.TakeBetter(loaded, fit);
        }

        var whole = fit;
        if (rate < design.Options.SlowPulsePerMinute)
        {
            // Breathing's second harmonic lies on the first wave of a slow pulse: the other waves carry R as well.
            fit = loaded.Load(bins, seconds, SlowEdge.OfFastPulse) with { PulseSize = taken.Fit.PulseSize, IsWithoutFirstWave = true };
            taken.TakeBetter(loaded, fit);
        }

        for (var line = 0; line < LineRemover.MostLines && !IsCoherent(taken.Fit) && loaded.TryRemoveLine(bins, ref fit); line++)
        {
            TakeWithoutLine(fit);
            if (line == 0 && !IsCoherent(taken.Fit) && LineRemover.HasTurnsToWiden(fit.LineHz * seconds))
            {
                loaded.WidenLine(ref fit);
                TakeWithoutLine(fit);
            }

            if (line == 0 && !IsCoherent(taken.Fit) && fit.LinesExplain > design.Options.AddedLineShare)
            {
                TakeWithoutAdded(bins, edge, ref fit);
            }
        }

        if (!IsCoherent(taken.Fit) || (taken.Fit.Lines > 0 && taken.Fit.LineHz < design.Options.SlowestRapidPulseHz))
        {
            // What vessels drift by may look like a line or two, as slow as breathing's harmonics; a lamp's are seldom there.
            loaded.Load(bins, seconds, edge);
            TakeBent(bins, whole);
        }
    }

    // What vessels drift by may look like a line of few turns as well, and takes the pulse with it: a window without lines that
    // agrees well enough to be read tells more.
    private void TakeWithoutLine(in RatioFit fit)
    {
        var isToldWithout = taken.Fit.Lines == 0 && taken.Fit.Disagreement <= design.Options.DisagreementWithoutLines;
        if (!isToldWithout || LineRemover.HasTurnsToWiden(fit.LineHz * fit.WindowSeconds))
        {
            taken.TakeBetter(loaded, fit);
        }
    }

    // A lamp of many counts rides on breathing and baseline as well, and bends the logarithm; one of the pulse's own waves, which goes
    // with a line on it, does neither. What the lights agree better without tells which it was.
    private void TakeWithoutAdded(SmoothedBins bins, SlowEdge edge, ref RatioFit fit)
    {
        fit = loaded.RemoveAdded(bins, edge, fit);
        TakeWithoutLine(fit);
        if (!IsCoherent(taken.Fit))
        {
            loaded.RemoveSecondWave(ref fit);
            TakeWithoutLine(fit);
        }

        if (!IsCoherent(taken.Fit))
        {
            loaded.RemoveRiding(ref fit);
            TakeWithoutLine(fit);
        }
    }

    // Beside a weak pulse breathing's overtones hide in its noise, and pull R towards their own.
    private void TakeWithoutBreathing(SmoothedBins bins, int seconds, double intervalSoFarSeconds)
    {
        var rate = 60 / intervalSoFarSeconds;
        if (!hasRed || !(taken.Fit.PulseSize < design.Options.WeakPulseSize) || !(rate >= design.Options.FastPulsePerMinute))
        {
            return;
        }

        var fit = loaded.Load(bins, seconds, design.EdgeOf(rate));
        if (IsCoherent(fit) && fit.PulseSize > design.Options.LeastPulseLeft * taken.Fit.PulseSize)
        {
            taken.Take(loaded, fit);
        }
    }

    // What is slower than the pulse is hardly in the curvature; what is not, movement, is in it as much. A lamp's flicker is the
    // most of it: that has been taken away as a line before.
    private void TakeBent(SmoothedBins bins, in RatioFit whole)
    {
        var most = Math.Min(design.Options.SeparatedDisagreement, design.Options.CurvatureShare * whole.Disagreement);
        if (!loaded.TryBend(bins, whole, out var bent) || (bent.Disagreement * bent.Disagreement) + (bent.StandardError * bent.StandardError) > most * most)
        {
            return;
        }

        if (taken.Fit.Lines > 0 && (IsCoherent(bent) || !IsCoherent(taken.Fit)))
        {
            taken.Restart();
        }

        taken.TakeBetter(loaded, bent);
    }

    // The tall second waves of a slow pulse are counted with its beats; its period is none the less its own. Breathing that is larger
    // than a weak pulse repeats less well.
    private double RateOf(ReadOnlySpan<double> pairs, double intervalSoFarSeconds)
    {
        finder.Find(pairs, intervalSoFarSeconds);
        return 60 / (finder.Periodicity >= SurePeriodicity ? Math.Max(finder.PeriodSeconds, finder.IntervalSeconds) : finder.IntervalSeconds);
    }
}
