namespace PulseStream.Signal;

/// <summary>Measures the window that ends with a second: ratio, lines, beats. The longest window whose lights agree is taken.</summary>
internal sealed class WindowAnalysis
{
    private readonly SignalDesign design;
    private readonly WindowRoom room;
    private readonly bool hasRed;
    private readonly LoadedWindow loaded;
    private readonly TakenWindow taken;
    private readonly WindowChoice choice;
    private readonly LineReturn lineReturn;
    private readonly WindowBeats beats;
    private readonly PulseTemplate calm;
    private readonly MotionSeparation separation;

    public WindowAnalysis(WindowRoom room, bool hasRed, bool isPleth)
    {
        design = room.Design;
        this.room = room;
        this.hasRed = hasRed;
        beats = new(room, hasRed, isPleth);
        separation = room.Separation;
        calm = new(design);
        loaded = new(room);
        taken = new(room);
        choice = new(room, hasRed, loaded, taken);
        lineReturn = new(room, loaded, taken, calm);
    }

    /// <summary>Beats found with the second measured last.</summary>
    public ReadOnlySpan<Beat> Beats => beats.Told;

    /// <summary>Leap of infrared below which nobody asks for it, as a logarithm.</summary>
    public double LeastLeap { get; set; }

    /// <summary>The next beat has no interval.</summary>
    public void Restart() => beats.Restart();

    /// <summary>The window measured last was calm: its pulse is what later movement is told from.</summary>
    /// <param name="isProven">Whether it is a living finger's for sure.</param>
    public void Learn(bool isProven)
    {
        beats.Teach(calm, taken.Room);
        calm.IsProven = isProven;
    }

    /// <summary>What pulses may be something else.</summary>
    public void DoubtPulse() => calm.IsProven = false;

    /// <summary>The finger has left.</summary>
    public void ForgetPulse() => calm.Forget();

    /// <summary>What a second is told of that has no window.</summary>
    public (RatioFit Fit, WindowPulse Pulse) Nothing()
    {
        beats.Clear();
        return (default, default);
    }

    /// <summary>Measures the newest window.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="endIndex">Index just past the second that is told.</param>
    public (RatioFit Fit, WindowPulse Pulse) Measure(SmoothedBins bins, long endIndex)
    {
        calm.Age();
        var seconds = choice.LongestFilled(bins);
        if (seconds < design.Options.ShortestWindowSeconds)
        {
            return Nothing();
        }

        choice.Take(bins, seconds, beats.IntervalSoFarSeconds);
        var fit = taken.Fit.Lines > 0 ? lineReturn.PutPulseBack(bins, beats.IntervalSoFarSeconds) : taken.Fit;
        if (fit.Lines > 0 || !choice.IsCoherent(fit))
        {
            fit = fit with { Newest = loaded.NewestScatter(bins) };
        }

        fit = BesideBreathing(bins, fit);
        fit = calm.IsKnown ? OfKnownPulse(bins, seconds, fit) : fit with { IsWandering = IsWandering(bins, seconds, fit) };
        if (hasRed)
        {
            var (ofBoth, besidePulse) = loaded.NewestLeap(bins, calm.IsKnown ? calm.Ratio : double.NaN, LeastLeap);
            fit = fit with { Leap = ofBoth, LeapBesidePulse = besidePulse };
        }

        var pulse = beats.Measure(bins, taken.Room, loaded.Room, fit, taken.Noise, design.SlowOf(fit.WindowSeconds, taken.Edge), calm.Knows(fit.Ratio), endIndex);
        fit = fit with { NoiseSize = beats.WhiteNoiseShare * fit.NoiseSize };
        return (hasRed ? fit : fit with { Ratio = double.NaN, StandardError = double.NaN, Disagreement = double.NaN }, pulse);
    }

    // An overtone of breathing that lies on the first wave of a slow pulse stays there for many beats, and is far less than all white noise:
    // what it puts R off by shows where that wave is taken away.
    private RatioFit BesideBreathing(SmoothedBins bins, in RatioFit fit)
    {
        if (!hasRed || !(60 / beats.IntervalSoFarSeconds < design.Options.SlowPulsePerMinute) || fit.Lines > 0 || fit.IsWithoutFirstWave || fit.IsMoving)
        {
            return fit;
        }

        var others = loaded.Load(bins, fit.WindowSeconds, SlowEdge.OfFastPulse);
        var own = fit.StandardError * fit.StandardError;
        var apart = others.Ratio - fit.Ratio;
        var chance = Math.Max(0, (others.StandardError * others.StandardError) - own);
        return others.IsMoving ? fit : fit with { StandardError = Math.Sqrt(own + Math.Max(0, (apart * apart) - chance)) };
    }

    private bool IsWandering(SmoothedBins bins, int seconds, in RatioFit fit)
    {
        if (!hasRed || seconds < design.Options.SeparationWindowSeconds || fit.Lines > 0 || choice.IsCoherent(fit) || fit.Disagreement > design.Options.SoundDisagreement)
        {
            return false;
        }

        loaded.Load(bins, seconds, SlowEdge.OfAnyPulse);
        return room.Walk.IsLeft(loaded.Pairs, fit.Ratio, loaded.Noise);
    }

    // What the window tells once a pulse is known: while its blood changes, or something moves.
    private RatioFit OfKnownPulse(SmoothedBins bins, int seconds, in RatioFit coherent)
    {
        if (!hasRed || choice.IsCoherent(coherent) || seconds < design.Options.SeparationWindowSeconds)
        {
            return coherent;
        }

        var edge = design.EdgeOf(60 * design.BinRateHz / calm.PeriodBins);
        var whole = loaded.Load(bins, seconds, edge);
        var basis = design.SlowOf(seconds, edge);
        return TryReadChanged(bins, whole, basis, coherent, out var changed) ? changed : Separated(whole, basis, coherent);
    }

    // The known pulse goes on while its blood changes: as tall in infrared, and the lights agree before and after. A straight line that
    // bridges a gap holds none of it.
    private bool TryReadChanged(SmoothedBins bins, in RatioFit whole, SlowBasis basis, in RatioFit coherent, out RatioFit changed)
    {
        changed = default;
        if (bins.Gaps.MissingSince(bins.NewestBin - basis.Length) > 0
            || !(Math.Abs(Math.Log(whole.PulseSize / calm.Size)) < design.Options.LargestGrowthAtChange)
            || !room.Changed.TryRead(loaded.Pairs, basis, loaded.Noise, whole, out changed))
        {
            return false;
        }

        changed = changed with { Newest = coherent.Newest };
        taken.Take(loaded, changed);
        return true;
    }

    // Leaves the pulse without the movement in 'taken' where that could be told.
    private RatioFit Separated(in RatioFit whole, SlowBasis basis, in RatioFit coherent)
    {
        var window = loaded.Pairs;
        if (coherent.Disagreement <= design.Options.SeparatedDisagreement
            || !separation.TrySeparate(window, basis, calm, out var separated)
            || separated.StandardError > Math.Sqrt((coherent.StandardError * coherent.StandardError) + (coherent.Disagreement * coherent.Disagreement)))
        {
            return coherent;
        }

        var pulse = taken.Room[..window.Length];
        separation.CopyPulse(separated.Ratio, pulse);
        return whole with
        {
            Ratio = separated.Ratio,
            StandardError = separated.StandardError,
            Disagreement = 0,
            PulseSize = Math.Sqrt(RatioSums.Over(pulse).Infrared / basis.Length),
            IsMoving = false,
            IsSeparated = true,
            Newest = coherent.Newest,
            LineHz = coherent.IsPureLine ? coherent.LineHz : 0,
            LinesExplain = coherent.IsPureLine ? coherent.LinesExplain : 0,
            WasPureLine = coherent.IsPureLine,
        };
    }
}
