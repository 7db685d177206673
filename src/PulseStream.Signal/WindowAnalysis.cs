namespace PulseStream.Signal;

/// <summary>Measures the window that ends with a second: ratio, lines, beats. The longest window whose lights agree is taken.</summary>
internal sealed class WindowAnalysis
{
    // Three beats, wherever the window falls on them: with fewer none can be compared with two others.
    private const double ComparedIntervals = 3.2;
    private readonly SignalDesign design;
    private readonly bool hasRed;
    private readonly double[] pairs;
    private readonly double[] best;
    private readonly LineRemover lines;
    private readonly BeatFinder finder;
    private readonly WindowBeats beats;
    private readonly PulseTemplate calm;
    private readonly MotionSeparation separation;
    private int removed;
    private WhiteNoise noise;
    private WhiteNoise takenNoise;
    private readonly double[] takenLinesHz = new double[LineRemover.MostLines];
    private double loadedPower;
    private SlowEdge loadedEdge;
    private SlowEdge takenEdge;

    public WindowAnalysis(WindowRoom room, bool hasRed, bool isPleth)
    {
        design = room.Design;
        this.hasRed = hasRed;
        pairs = room.Pairs;
        best = room.Best;
        lines = room.Lines;
        finder = room.Finder;
        beats = new(room, hasRed, isPleth);
        separation = room.Separation;
        calm = new(design);
    }

    /// <summary>Beats found with the second measured last.</summary>
    public ReadOnlySpan<Beat> Beats => beats.Told;

    /// <summary>The next beat has no interval.</summary>
    public void Restart() => beats.Restart();

    /// <summary>The window measured last was calm: its pulse is what later movement is told from.</summary>
    public void Learn() => beats.Teach(calm, best);

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
        var options = design.Options;
        var seconds = LongestFilled(bins);
        if (seconds < options.ShortestWindowSeconds)
        {
            return Nothing();
        }

        var fit = BestOf(bins, seconds);
        if (fit.Lines > 0)
        {
            fit = PutPulseBack(bins, fit);
        }

        if (fit.Lines > 0 || !IsCoherent(fit))
        {
            fit = fit with { Newest = NewestScatter(bins) };
        }

        fit = Separated(bins, seconds, fit);
        return (hasRed ? fit : fit with { Ratio = double.NaN, StandardError = double.NaN, Disagreement = double.NaN }, beats.Measure(bins, best, pairs, fit, takenNoise, design.SlowOf(fit.WindowSeconds, takenEdge), calm.Knows(fit.Ratio), endIndex));
    }

    // Leaves the window that was taken in 'best'.
    private RatioFit BestOf(SmoothedBins bins, int longest)
    {
        var taken = default(RatioFit);
        for (var seconds = longest; seconds >= design.Options.ShortestWindowSeconds; seconds -= 2)
        {
            if (seconds < longest && seconds < ComparedIntervals * beats.IntervalSoFarSeconds)
            {
                return taken;
            }

            var fit = Load(bins, seconds, SlowEdge.OfAnyPulse);
            Take(fit, ref taken);
            if (IsCoherent(taken))
            {
                return taken;
            }

            var rate = taken.IsWithoutFirstWave ? 0 : RateOf(bins, taken.WindowSeconds);
            var edge = design.EdgeOf(rate);
            if (edge != SlowEdge.OfAnyPulse)
            {
                fit = Load(bins, seconds, edge);
                Take(fit, ref taken);
            }
            else if (rate < design.Options.SlowPulsePerMinute)
            {
                // Breathing's second harmonic lies on the first wave of a slow pulse: the other waves carry R as well.
                fit = Load(bins, seconds, SlowEdge.OfFastPulse) with { PulseSize = taken.PulseSize, IsWithoutFirstWave = true };
                Take(fit, ref taken);
            }

            for (var line = 0; line < LineRemover.MostLines && !IsCoherent(taken) && TryRemoveLine(bins, seconds, ref fit); line++)
            {
                Take(fit, ref taken);
            }

            if (IsCoherent(taken))
            {
                return taken;
            }
        }

        return taken;
    }

    // Leaves the pulse without the movement in 'best' where that could be told.
    private RatioFit Separated(SmoothedBins bins, int seconds, in RatioFit taken)
    {
        var options = design.Options;
        if (!hasRed || !calm.IsKnown || taken.Disagreement <= options.SeparatedDisagreement || seconds < options.SeparationWindowSeconds)
        {
            return taken;
        }

        var edge = design.EdgeOf(60 * design.BinRateHz / calm.PeriodBins);
        var fit = Load(bins, seconds, edge);
        var basis = design.SlowOf(seconds, edge);
        var window = pairs.AsSpan(0, 2 * basis.Length);
        if (!separation.TrySeparate(window, basis, calm, out var separated)
            || FrontOf(window) < options.LeastFrontShare * calm.FrontSteepness
            || separated.StandardError > Math.Sqrt((taken.StandardError * taken.StandardError) + (taken.Disagreement * taken.Disagreement)))
        {
            return taken;
        }

        window.CopyTo(best);
        return fit with
        {
            Ratio = separated.Ratio,
            StandardError = separated.StandardError,
            Disagreement = 0,
            PulseSize = Math.Sqrt(RatioSums.Over(window).Infrared / basis.Length),
            IsMoving = false,
            IsSeparated = true,
            Newest = taken.Newest,
        };
    }

    private BloodCourse CourseOf(ReadOnlySpan<double> window)
    {
        finder.Course.Take(window);
        return finder.Course;
    }

    private void Take(in RatioFit fit, ref RatioFit taken)
    {
        if (taken.WindowSeconds == 0 || fit.Disagreement < taken.Disagreement)
        {
            pairs.AsSpan(0, 2 * design.SlowOf(fit.WindowSeconds).Length).CopyTo(best);
            taken = fit;
            takenEdge = loadedEdge;
            takenNoise = noise;
            lines.RemovedHz.CopyTo(takenLinesHz);
        }
    }

    // Leaves the window in 'best' without the lines alone, and with the pulse that went with them where it can be told: room
    // light's mixture is known. Where the window repeats worse with its pulse put back, the line was something else.
    private RatioFit PutPulseBack(SmoothedBins bins, RatioFit fit)
    {
        var without = LeaveWithoutLines(bins, fit);
        var whole = pairs.AsSpan(0, without.Length);
        var (periodicity, period, front) = (finder.Periodicity, finder.PeriodSeconds, FrontOf(without));
        var isOneLine = LinePart.IsOneLine(LinesOf(fit), fit.WindowSeconds, period);
        fit = fit with
        {
            PulseSize = LinePart.SizeOf(without),
            IsOneLine = isOneLine,
            IsPureLine = isOneLine && fit.LinesExplain >= design.Options.PureLineShare,
        };
        var mix = LinePart.MixOfRoomLight(bins.Last);
        if (!LinePart.IsTold(fit.Ratio, mix))
        {
            return fit;
        }

        var least = LinePart.IsOneMixtureOtherThan(whole, without, mix) ? periodicity : LinePart.LeastPeriodicityShare * periodicity;
        var taken = LinePart.AmplitudeOf(whole, without);
        var amplitude = LinePart.LeavePulse(whole, without, fit.Ratio, mix);
        finder.Find(whole, beats.IntervalSoFarSeconds);
        var isStrange = !LinePart.IsMultiple(finder.PeriodSeconds, period) || !IsLikely(whole, fit.PulseSize, front);
        if (finder.Periodicity < least || (isStrange && (fit.IsRoomLight || fit.IsPureLine || IsBetweenHarmonics(fit, period))))
        {
            return fit with { RoomLightSize = fit.IsRoomLight ? taken : 0 };
        }

        whole.CopyTo(best);
        return fit with { PulseSize = LinePart.SizeOf(whole), RoomLightSize = amplitude };
    }

    // Leaves the window in 'pairs', and in 'best' the same without lines, but with what rides on the pulse. With its second wave
    // a lamp makes a slow pulse look fast: where it repeats worse, its first wave has gone with the baseline.
    private ReadOnlySpan<double> LeaveWithoutLines(SmoothedBins bins, in RatioFit fit)
    {
        var edge = takenEdge;
        var without = LeaveWithoutLines(bins, fit, edge);
        if (edge == SlowEdge.OfAnyPulse)
        {
            return without;
        }

        var periodicity = finder.Periodicity;
        without = LeaveWithoutLines(bins, fit, SlowEdge.OfAnyPulse);
        return finder.Periodicity > periodicity ? without : LeaveWithoutLines(bins, fit, edge);
    }

    private ReadOnlySpan<double> LeaveWithoutLines(SmoothedBins bins, in RatioFit fit, SlowEdge edge)
    {
        Load(bins, fit.WindowSeconds, edge);
        var without = best.AsSpan(0, 2 * design.SlowOf(fit.WindowSeconds).Length);
        pairs.AsSpan(0, without.Length).CopyTo(without);
        takenEdge = edge;
        lines.RemoveAlone(without, LinesOf(fit));
        finder.Find(without, beats.IntervalSoFarSeconds);
        return without;
    }

    private ReadOnlySpan<double> LinesOf(in RatioFit fit) => takenLinesHz.AsSpan(0, fit.Lines);

    // Light that reaches the channels in another mixture or phase than told comes back with the pulse and bends it.
    private bool IsLikely(ReadOnlySpan<double> whole, double sizeWithout, double frontWithout) =>
        calm.IsKnown
            ? LinePart.SizeOf(whole) < design.Options.LargestPutBack * calm.Size && FrontOf(whole) >= design.Options.LeastFrontShare * calm.FrontSteepness
            : LinePart.SizeOf(whole) < design.Options.LargestPutBack * sizeWithout && FrontOf(whole) > frontWithout;

    private double FrontOf(ReadOnlySpan<double> window) => WaveShape.Of(CourseOf(window), 0, design.BinRateHz).FrontSteepness;

    // What moves with the heart, as veins do, lies on the pulse's harmonics: what it leaves of the pulse says nothing of blood.
    private bool IsBetweenHarmonics(in RatioFit fit, double periodSeconds)
    {
        const double resolutions = 1.5;
        var harmonic = fit.LineHz * (calm.IsKnown ? calm.PeriodBins / design.BinRateHz : periodSeconds);
        return Math.Abs(harmonic - Math.Round(harmonic)) > resolutions * periodSeconds / fit.WindowSeconds;
    }

    // The newest half of the shortest window: a disturbance that has just begun fills most of it.
    private LightScatter NewestScatter(SmoothedBins bins)
    {
        var seconds = design.Options.ShortestWindowSeconds;
        Load(bins, seconds, SlowEdge.OfAnyPulse);
        var length = design.SlowOf(seconds).Length;
        return lines.Scatter(pairs.AsSpan(2 * (length / 2), 2 * (length - (length / 2))));
    }

    private double RateOf(SmoothedBins bins, int seconds)
    {
        Find(bins, seconds);
        return 60 / finder.IntervalSeconds;
    }

    private int LongestFilled(SmoothedBins bins)
    {
        for (var seconds = design.Options.LongestWindowSeconds; seconds >= design.Options.ShortestWindowSeconds; seconds--)
        {
            if (bins.Count >= design.SlowOf(seconds).Length)
            {
                return seconds;
            }
        }

        return 0;
    }

    private bool IsCoherent(in RatioFit fit) => !hasRed || fit.Disagreement <= design.Options.CoherentDisagreement;

    private RatioFit Load(SmoothedBins bins, int seconds, SlowEdge edge)
    {
        var basis = design.SlowOf(seconds, edge);
        var window = pairs.AsSpan(0, 2 * basis.Length);
        bins.CopyNewest(window);
        basis.Remove(window);
        lines.Restart(basis);
        removed = basis.Count;
        loadedEdge = edge;
        noise = bins.NoiseOver(seconds);
        var fit = RatioRegression.Fit(window, noise, design.Kernel.NoiseGain, removed, seconds);
        loadedPower = PowerOfDisagreement(fit);
        return fit;
    }

    private static double PowerOfDisagreement(in RatioFit fit) => Square(fit.Disagreement * fit.PulseSize);

    private static double Square(double x) => x * x;

    private bool TryRemoveLine(SmoothedBins bins, int seconds, ref RatioFit fit)
    {
        var window = pairs.AsSpan(0, 2 * design.SlowOf(seconds).Length);
        var noisePower = window.Length / 2 * design.Kernel.NoiseGain * noise.OfResidual(fit.Ratio);
        if (!lines.TryRemove(window, noisePower, design.Options.LineShare))
        {
            return false;
        }

        removed += LineRemover.FreedomOfLine;
        noise = noise.WithoutLine(lines.InInfrared, lines.InRed, design.Kernel.GainAt(lines.LineHz / design.BinRateHz), design.Kernel.RestNoiseGain);
        var left = RatioRegression.Fit(window, noise, design.Kernel.NoiseGain, removed, seconds);
        fit = left with
        {
            Lines = fit.Lines + 1,
            LineHz = lines.RemovedHz[0],
            LinesExplain = 1 - (PowerOfDisagreement(left) / loadedPower),
            IsWithoutFirstWave = fit.IsWithoutFirstWave,
            IsRoomLight = fit.Lines == 0 ? LinePart.IsEqualInCounts(lines.InInfrared, lines.InRed, bins.Last) : fit.IsRoomLight,
        };
        return true;
    }

    private ReadOnlySpan<double> Find(SmoothedBins bins, int seconds)
    {
        var window = best.AsSpan(0, 2 * design.SlowOf(seconds).Length);
        finder.Find(window, beats.IntervalSoFarSeconds);
        return window;
    }
}
