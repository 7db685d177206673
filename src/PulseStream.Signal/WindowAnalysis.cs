namespace PulseStream.Signal;

/// <summary>Measures the window that ends with a second: ratio, lines, beats. The longest window whose lights agree is taken.</summary>
internal sealed class WindowAnalysis
{
    // A beat is told once the next bins cannot move its steepest rise any more.
    private const double EmitDelaySeconds = 0.22;

    // Two rises closer than this are one beat seen in two windows; further apart than that, beats were missed between them.
    private const double ShortestIntervalSeconds = 0.2;
    private const double LongestIntervalSeconds = 3;

    // Stands in for the interval where fewer than two beats were found: 75 a minute.
    private const double UsualIntervalSeconds = 0.8;

    // Short enough pieces of anything are alike: where nothing repeats, beats are compared as those of 100 a minute.
    private const double LeastComparedSeconds = 0.6;

    // Fronts that agree less than this, more beats than periods, and a period that shows nevertheless: noise in the pulse's own
    // band at 5 dB leaves 0.7 of the autocorrelation. What is measured of the fronts stays, the beats are found otherwise.
    private const double DrownedAgreement = 0.96;
    private const double DrownedPeriodicity = 0.4;
    private const double DrownedIntervalShare = 0.92;

    // An interval half as long again as usual holds another beat, where a gap may have hidden one.
    private const double HiddenBeatShare = 1.5;

    // A beat reaches from before its front to before the next one's, in shares of the interval.
    private const double BeatBeforeShare = 0.3;
    private const double BeatAfterShare = 0.7;
    private readonly SignalDesign design;
    private readonly bool hasRed;
    private readonly bool isPleth;
    private readonly double[] pairs;
    private readonly double[] best;
    private readonly LineRemover lines;
    private readonly BeatFinder finder;
    private readonly BeatShape shape;
    private readonly PulseTemplate calm;
    private readonly MotionSeparation separation;
    private readonly BeatTrain train;
    private readonly Beat[] beats;
    private double lastRiseIndex = double.NegativeInfinity;
    private double usualIntervalSeconds = double.NaN;
    private int beatCount;
    private int removed;
    private (int Length, double PeriodBins, double FrontSteepness) learnable;
    private bool isLoadedFast;
    private bool isTakenFast;

    public WindowAnalysis(WindowRoom room, bool hasRed, bool isPleth)
    {
        design = room.Design;
        this.hasRed = hasRed;
        this.isPleth = isPleth;
        pairs = room.Pairs;
        best = room.Best;
        lines = room.Lines;
        finder = room.Finder;
        shape = room.Shape;
        beats = room.Beats;
        separation = room.Separation;
        calm = new(design);
        train = new(design.BinRateHz);
    }

    /// <summary>Beats found with the second measured last.</summary>
    public ReadOnlySpan<Beat> Beats => beats.AsSpan(0, beatCount);

    /// <summary>The next beat has no interval.</summary>
    public void Restart()
    {
        lastRiseIndex = double.NegativeInfinity;
        usualIntervalSeconds = double.NaN;
        train.Restart();
    }

    /// <summary>The window measured last was calm: its pulse is what later movement is told from.</summary>
    public void Learn()
    {
        if (learnable.Length > 0)
        {
            calm.Learn(best.AsSpan(0, learnable.Length), finder.Rises, learnable.PeriodBins, learnable.FrontSteepness);
        }
    }

    /// <summary>The finger has left.</summary>
    public void ForgetPulse() => calm.Forget();

    /// <summary>What a second is told of that has no window.</summary>
    public (RatioFit Fit, WindowPulse Pulse) Nothing()
    {
        beatCount = 0;
        return (default, default);
    }

    /// <summary>Measures the newest window.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="endIndex">Index just past the second that is told.</param>
    public (RatioFit Fit, WindowPulse Pulse) Measure(SmoothedBins bins, long endIndex)
    {
        beatCount = 0;
        learnable = default;
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
        return (hasRed ? fit : fit with { Ratio = double.NaN, StandardError = double.NaN, Disagreement = double.NaN }, MeasurePulse(bins, fit, endIndex));
    }

    // Leaves the window that was taken in 'best'.
    private RatioFit BestOf(SmoothedBins bins, int longest)
    {
        var taken = default(RatioFit);
        for (var seconds = longest; seconds >= design.Options.ShortestWindowSeconds; seconds -= 2)
        {
            var fit = Load(bins, seconds, isFastPulse: false);
            Take(fit, ref taken);
            if (IsCoherent(taken))
            {
                return taken;
            }

            if (IsFastPulse(bins, taken.WindowSeconds))
            {
                fit = Load(bins, seconds, isFastPulse: true);
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

        var isFastPulse = 60 * design.BinRateHz >= options.FastPulsePerMinute * calm.PeriodBins;
        var fit = Load(bins, seconds, isFastPulse);
        var basis = design.SlowOf(seconds, isFastPulse);
        var window = pairs.AsSpan(0, 2 * basis.Length);
        if (!separation.TrySeparate(window, basis, calm, out var separated)
            || WaveShape.Of(window, 0, design.BinRateHz).FrontSteepness < options.LeastFrontShare * calm.FrontSteepness
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

    private void Take(in RatioFit fit, ref RatioFit taken)
    {
        if (taken.WindowSeconds == 0 || fit.Disagreement < taken.Disagreement)
        {
            pairs.AsSpan(0, 2 * design.SlowOf(fit.WindowSeconds).Length).CopyTo(best);
            taken = fit;
            isTakenFast = isLoadedFast;
        }
    }

    // Room light's mixture is known. Where the window repeats worse with its pulse put back, the line was something else.
    private RatioFit PutPulseBack(SmoothedBins bins, in RatioFit fit)
    {
        var mix = LinePart.MixOfRoomLight(bins.Last);
        if (!LinePart.IsTold(fit.Ratio, mix))
        {
            return fit;
        }

        var without = Find(bins, fit.WindowSeconds);
        var periodicity = finder.Periodicity;
        Load(bins, fit.WindowSeconds, isTakenFast);
        var whole = pairs.AsSpan(0, without.Length);
        var least = LinePart.IsOneMixtureOtherThan(whole, without, mix) ? periodicity : LinePart.LeastPeriodicityShare * periodicity;
        var taken = LinePart.AmplitudeOf(whole, without);
        var amplitude = LinePart.LeavePulse(whole, without, fit.Ratio, mix);
        finder.Find(whole, usualIntervalSeconds);
        if (finder.Periodicity < least)
        {
            return fit with { RoomLightSize = fit.IsRoomLight ? taken : 0 };
        }

        whole.CopyTo(best);
        return fit with { PulseSize = LinePart.SizeOf(whole), RoomLightSize = amplitude };
    }

    // The newest half of the shortest window: a disturbance that has just begun fills most of it.
    private LightScatter NewestScatter(SmoothedBins bins)
    {
        var seconds = design.Options.ShortestWindowSeconds;
        Load(bins, seconds, isFastPulse: false);
        var length = design.SlowOf(seconds).Length;
        return lines.Scatter(pairs.AsSpan(2 * (length / 2), 2 * (length - (length / 2))));
    }

    private bool IsFastPulse(SmoothedBins bins, int seconds)
    {
        Find(bins, seconds);
        return 60 / finder.IntervalSeconds >= design.Options.FastPulsePerMinute;
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

    private RatioFit Load(SmoothedBins bins, int seconds, bool isFastPulse)
    {
        var basis = design.SlowOf(seconds, isFastPulse);
        var window = pairs.AsSpan(0, 2 * basis.Length);
        bins.CopyNewest(window);
        basis.Remove(window);
        lines.Restart(basis);
        removed = basis.Count;
        isLoadedFast = isFastPulse;
        return RatioRegression.Fit(window, bins.NoiseOver(seconds), design.Kernel.NoiseGain, removed, seconds);
    }

    private bool TryRemoveLine(SmoothedBins bins, int seconds, ref RatioFit fit)
    {
        var window = pairs.AsSpan(0, 2 * design.SlowOf(seconds).Length);
        var noise = bins.NoiseOver(seconds);
        var noisePower = window.Length / 2 * design.Kernel.NoiseGain * noise.OfResidual(fit.Ratio);
        if (!lines.TryRemove(window, noisePower, design.Options.LineShare))
        {
            return false;
        }

        removed += LineRemover.FreedomOfLine;
        fit = RatioRegression.Fit(window, noise, design.Kernel.NoiseGain, removed, seconds) with
        {
            Lines = fit.Lines + 1,
            IsRoomLight = fit.Lines == 0 ? IsEqualInCounts(bins.Last) : fit.IsRoomLight,
        };
        return true;
    }

    private bool IsEqualInCounts(in Bin level)
    {
        const double equalShare = 0.25;
        var infrared = Math.Exp(level.Infrared);
        var red = Math.Exp(level.Red);
        var cosine = (lines.InInfrared.Cosine * infrared) - (lines.InRed.Cosine * red);
        var sine = (lines.InInfrared.Sine * infrared) - (lines.InRed.Sine * red);
        var size = Math.Max(Size(lines.InInfrared) * infrared, Size(lines.InRed) * red);
        return Size((cosine, sine)) < equalShare * size;
    }

    private static double Size((double Cosine, double Sine) wave) => Math.Sqrt((wave.Cosine * wave.Cosine) + (wave.Sine * wave.Sine));

    private ReadOnlySpan<double> Find(SmoothedBins bins, int seconds)
    {
        var window = best.AsSpan(0, 2 * design.SlowOf(seconds).Length);
        finder.Find(window, usualIntervalSeconds);
        return window;
    }

    private Rhythm RhythmOf(SmoothedBins bins, in RatioFit fit, int length, long endIndex)
    {
        var end = bins.NewestBin + 1.0;
        var isSound = !hasRed || fit.Disagreement <= design.Options.SoundDisagreement;
        train.Take(finder.AllRises, end - length, end, isSound, fit.WindowSeconds == design.Options.LongestWindowSeconds);
        var averaged = design.Options.AveragingSeconds * design.BinRateHz;
        var window = RateWindow.Of(end - 1 - finder.UnseenBins, BinOf(endIndex), train.SoundFrom, averaged);
        var hiddenAbove = bins.HasBridge((int)averaged) ? HiddenBeatShare * finder.UsualIntervalSeconds * design.BinRateHz : double.PositiveInfinity;
        return Rhythm.Of(train.Rises, window, design.BinRateHz, hiddenAbove);
    }

    private WindowPulse MeasurePulse(SmoothedBins bins, in RatioFit fit, long endIndex)
    {
        var window = Find(bins, fit.WindowSeconds);
        var rhythm = Judge(bins, window, fit, endIndex);
        var count = finder.Count;
        var (agreement, height) = (shape.Agreement, shape.Height);
        var wave = WaveShape.Of(WholeWave(bins, fit, window), SlopeNoise(bins, fit), design.BinRateHz);
        learnable = fit.WindowSeconds >= design.Options.SeparationWindowSeconds
            ? (window.Length, finder.IntervalSeconds * design.BinRateHz, wave.FrontSteepness)
            : default;
        if (IsDrowned(agreement))
        {
            finder.FindInNoise(window);
            rhythm = Judge(bins, window, fit, endIndex);
        }

        Emit(bins, window);
        return new(
            count,
            rhythm.RatePerMinute,
            rhythm.RateSpreadPerMinute,
            rhythm.Irregularity,
            finder.Periodicity,
            finder.PeriodSeconds,
            agreement,
            wave.FrontSteepness,
            wave.Crest,
            PerfusionOf(height));
    }

    // Two lights that agree are not drowned: what rises in both is blood. One alone cannot tell, but noise adds beats to a
    // period that shows through it.
    private bool IsDrowned(double agreement) =>
        !hasRed && !(agreement >= DrownedAgreement)
        && finder.Periodicity > DrownedPeriodicity
        && finder.IntervalSeconds < DrownedIntervalShare * finder.PeriodSeconds;

    private Rhythm Judge(SmoothedBins bins, ReadOnlySpan<double> window, in RatioFit fit, long endIndex)
    {
        var rhythm = RhythmOf(bins, fit, window.Length / 2, endIndex);
        usualIntervalSeconds = rhythm.MedianIntervalSeconds;
        shape.Judge(WholeWave(bins, fit, window), finder.Rises, ComparedSeconds() * design.BinRateHz);
        return rhythm;
    }

    // The slow part takes half of a slow pulse's first wave away and bends what is left: its shape is seen with less taken.
    private ReadOnlySpan<double> WholeWave(SmoothedBins bins, in RatioFit fit, ReadOnlySpan<double> window)
    {
        if (fit.IsSeparated || fit.Lines > 0 || !(60 / finder.IntervalSeconds < design.Options.SlowPulsePerMinute))
        {
            return window;
        }

        var basis = design.SlowOfSlowPulse(fit.WindowSeconds);
        var whole = pairs.AsSpan(0, 2 * basis.Length);
        bins.CopyNewest(whole);
        basis.Remove(whole);
        return whole;
    }

    private double SlopeNoise(SmoothedBins bins, in RatioFit fit) => bins.NoiseOver(fit.WindowSeconds).Infrared * design.Kernel.SlopeNoiseGain;

    private double ComparedSeconds()
    {
        var known = double.IsNaN(usualIntervalSeconds) ? finder.IntervalSeconds : usualIntervalSeconds;
        var interval = double.IsNaN(known) ? UsualIntervalSeconds : known;
        return finder.RepeatsWell ? interval : Math.Max(interval, LeastComparedSeconds);
    }

    // Peak to trough over the mean, from the logarithm: exp(h) - 1 over the middle of both.
    private double PerfusionOf(double height) => isPleth ? double.NaN : 200 * Math.Tanh(height / 2);

    private void Emit(SmoothedBins bins, ReadOnlySpan<double> window)
    {
        var start = bins.NewestBin - (window.Length / 2) + 1;
        var rate = design.Rate.Hz;
        var newest = IndexOf(bins.NewestBin) - (EmitDelaySeconds * rate);
        for (var k = 0; k < finder.Count && beatCount < beats.Length; k++)
        {
            var index = IndexOf(start + finder.Rises[k]);
            if (index > newest || index < lastRiseIndex + (ShortestIntervalSeconds * rate) || (double.IsNegativeInfinity(lastRiseIndex) && k == 0))
            {
                continue;
            }

            var interval = (index - lastRiseIndex) / rate;
            beats[beatCount++] = new(
                index,
                interval < LongestIntervalSeconds ? interval : double.NaN,
                RatioOfBeat(window, k),
                PerfusionOf(shape.Heights[k]),
                Math.Max(0, shape.Agreements[k]));
            lastRiseIndex = index;
        }
    }

    private double IndexOf(double bin) => (bin * design.SamplesPerBin) + (0.5 * (design.SamplesPerBin - 1));

    private double BinOf(double index) => (index - (0.5 * (design.SamplesPerBin - 1))) / design.SamplesPerBin;

    private double RatioOfBeat(ReadOnlySpan<double> window, int k)
    {
        if (!hasRed)
        {
            return double.NaN;
        }

        var period = finder.Count > 1 ? finder.Rises[Math.Max(k, 1)] - finder.Rises[Math.Max(k, 1) - 1] : design.BinRateHz;
        var from = Math.Max(0, (int)(finder.Rises[k] - (BeatBeforeShare * period)));
        var to = Math.Min(window.Length / 2, (int)(finder.Rises[k] + (BeatAfterShare * period)));
        double cross = 0, square = 0;
        for (var n = from; n < to; n++)
        {
            cross += window[2 * n] * window[(2 * n) + 1];
            square += window[2 * n] * window[2 * n];
        }

        return square > 0 ? cross / square : double.NaN;
    }
}
