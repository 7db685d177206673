namespace PulseStream.Signal;

/// <summary>Reads the beats of the window that R was read from: rate, shape, height, and each beat once as it is told.</summary>
internal sealed class WindowBeats
{
    // Stands in for the interval where fewer than two beats were found: 75 a minute.
    private const double UsualIntervalSeconds = 0.8;

    // Short enough pieces of anything are alike: where nothing repeats, beats are compared as those of 100 a minute.
    private const double LeastComparedSeconds = 0.6;

    // Fronts that agree less than this, more beats than periods, and a period that shows nevertheless: noise in the pulse's own
    // band at 5 dB leaves 0.7 of the autocorrelation. What is measured of the fronts stays, the beats are found otherwise.
    private const double DrownedAgreement = 0.96;
    private const double DrownedPeriodicity = 0.4;
    private const double DrownedIntervalShare = 0.92;

    // What the slow part gives back to a slow pulse lets it repeat as well as before or better; a breath or drift among it, many
    // times a weak pulse, does not keep to the pulse's period.
    private const double LeastRepetition = 0.6;
    private const double MostRepetitionLost = 0.1;

    // A window whose beats differ in turn repeats no better now and then; the fronts tell the rest.
    private const double LeastPairedPeriodicity = 0.5;

    // Beats that repeat so well are of one length.
    private const double LeastRhythm = 0.8;

    private readonly SignalDesign design;
    private readonly bool hasRed;
    private readonly bool isPleth;
    private readonly BeatFinder finder;
    private readonly BeatShape shape;
    private readonly LifeSigns life;
    private readonly StretchedBeats stretched;
    private readonly BeatTrain train;
    private readonly BeatVotes votes;
    private readonly PairCourse pairs = new();
    private readonly double[] either = new double[BeatFinder.MostBeats];
    private readonly BeatTeller teller;
    private (int Length, double PeriodBins, double FrontSteepness, double Ratio) learnable;
    private double irregularitySoFar;
    private double likeness;
    private int eitherCount;
    private PairKind lastPairs;
    private bool wereUneven;

    public WindowBeats(WindowRoom room, bool hasRed, bool isPleth)
    {
        design = room.Design;
        this.hasRed = hasRed;
        this.isPleth = isPleth;
        finder = room.Finder;
        shape = room.Shape;
        life = new(room);
        stretched = room.Stretched;
        train = new(design.BinRateHz);
        votes = new(design.BinRateHz);
        teller = new(room, hasRed);
    }

    /// <summary>Beats told with the second measured last.</summary>
    public ReadOnlySpan<Beat> Told => teller.Told;

    /// <summary>Interval of the beats so far, s; NaN where unknown.</summary>
    public double IntervalSoFarSeconds { get; private set; } = double.NaN;

    /// <summary>The next beat has no interval.</summary>
    public void Restart()
    {
        teller.Restart();
        IntervalSoFarSeconds = double.NaN;
        train.Restart();
        votes.Restart();
        pairs.Restart();
        irregularitySoFar = 0;
        lastPairs = PairKind.None;
        wereUneven = false;
    }

    /// <summary>A second without a window tells no beats and teaches nothing.</summary>
    public void Clear()
    {
        teller.Clear();
        votes.Skip();
        learnable = default;
    }

    /// <summary>Hands the pulse of the window measured last on, where the window is long enough.</summary>
    /// <param name="calm">What learns it.</param>
    /// <param name="window">The window, as it was measured.</param>
    public void Teach(PulseTemplate calm, ReadOnlySpan<double> window)
    {
        if (learnable.Length > 0)
        {
            calm.Learn(window[..learnable.Length], finder.Rises, learnable.PeriodBins, learnable.FrontSteepness, learnable.Ratio);
        }
    }

    /// <summary>How much of what passes for white noise is noise, root mean squares.</summary>
    public double WhiteNoiseShare { get; private set; } = 1;

    /// <summary>Measures the beats of a window.</summary>
    /// <param name="bins">The newest bins.</param>
    /// <param name="best">Begins with the window, slow part, lines and movement removed.</param>
    /// <param name="room">Room for another window.</param>
    /// <param name="fit">What was read from it.</param>
    /// <param name="noise">White noise of a bin of it.</param>
    /// <param name="removed">What was removed from it as slow.</param>
    /// <param name="isKnown">Whether the calm pulse is known, with this R.</param>
    /// <param name="endIndex">Index just past the second that is told.</param>
    public WindowPulse Measure(SmoothedBins bins, ReadOnlySpan<double> best, Span<double> room, in RatioFit fit, WhiteNoise noise, SlowBasis removed, bool isKnown, long endIndex)
    {
        var window = best[..(2 * design.WindowBins(fit.WindowSeconds))];
        finder.Find(window, IntervalSoFarSeconds, pairs);
        var whole = WholeWave(bins, fit, window, room);
        if (whole != window)
        {
            var periodicity = finder.Periodicity;
            finder.Find(whole, IntervalSoFarSeconds, pairs);
            if (periodicity >= LeastRepetition && !(finder.Periodicity >= periodicity - MostRepetitionLost))
            {
                whole = window;
                finder.Find(whole, IntervalSoFarSeconds, pairs);
            }
        }

        pairs.Delays.Take(finder.FoundPairs);
        pairs.Take(finder.OwnPairs, finder.AreEven, finder.AreSurelyUneven, finder.AreAsLikelyBeats);
        if (ArePairsOther())
        {
            votes.Restart();
        }

        var rhythm = Judge(bins, whole, fit, endIndex);
        var count = finder.Count;
        var (agreement, height) = (likeness, shape.Height);
        var beats = eitherCount > 0 ? either.AsSpan(0, eitherCount) : finder.Rises;
        WhiteNoiseShare = finder.RepeatsWell && 60 / finder.PeriodSeconds >= design.Options.RapidPulsePerMinute
            ? RapidPulseNoise.ShareOf(finder.Course, finder.PeriodSeconds, design.BinRateHz, noise, fit.Ratio)
            : 1;
        var wave = WaveShape.Of(finder.Course, noise.Infrared * design.Kernel.SlopeNoiseGain, design.BinRateHz);
        var third = isKnown && wave.FrontSteepness >= design.Options.SureFrontSteepness ? double.NaN : ThirdWave.ShareOf(finder.Course.Volumes, beats);
        if (finder.Periodicity < LeastRhythm && (!(third < design.Options.LeastThirdWaveOfStretched) || wave.FrontSteepness >= design.Options.FrontSteepnessOfStretched))
        {
            agreement = double.MaxNumber(agreement, stretched.AgreementOf(finder.Course.Volumes, beats));
        }

        learnable = fit.WindowSeconds >= design.Options.SeparationWindowSeconds && !fit.IsWithoutFirstWave
            ? (window.Length, finder.IntervalSeconds * design.BinRateHz, wave.FrontSteepness, fit.Ratio)
            : default;
        var period = finder.PeriodSeconds;
        if (IsDrowned(agreement))
        {
            votes.Skip();
            finder.FindInNoise(window);
            rhythm = Judge(bins, whole, fit, endIndex);
        }
        else
        {
            Vote(bins.NewestBin + 1.0, window.Length / 2, fit);
        }

        irregularitySoFar = rhythm.Irregularity;
        lastPairs = finder.Pairs == PairKind.None ? lastPairs : finder.Pairs;
        wereUneven = finder.AreUneven;
        teller.Tell(bins, window, isPleth);
        return new(
            count,
            rhythm.RatePerMinute,

            // Twice as many beats, or half of them: out by all of it.
            IsCountDoubtful(bins, fit, rhythm, BinOf(endIndex)) ? rhythm.RatePerMinute : rhythm.RateSpreadPerMinute,
            rhythm.Irregularity,
            finder.Periodicity,
            finder.PeriodSeconds,
            agreement,
            wave.FrontSteepness,
            wave.Crest,
            third,
            !isKnown && !double.IsNaN(third) ? life.BreathingShare(bins, fit, room) : double.NaN,
            isKnown || double.IsNaN(period) || third < design.Options.SteadinessThirdWaveShare ? double.NaN : life.UnsteadyShare(bins, window, room, fit, removed, (period, wave.FrontSteepness)),
            Perfusion.PercentOf(height, isPleth),
            wave.FrequencyHz,
            finder.PeriodicityOfTwo,
            finder.HasSecondWaves);
    }

    // Two lights that agree are not drowned: what rises in both is blood. One alone cannot tell, but noise adds beats to a
    // period that shows through it.
    private bool IsDrowned(double agreement) =>
        !hasRed && !(agreement >= DrownedAgreement)
        && finder.Periodicity > DrownedPeriodicity
        && finder.IntervalSeconds < DrownedIntervalShare * finder.PeriodSeconds;

    private Rhythm Judge(SmoothedBins bins, ReadOnlySpan<double> whole, in RatioFit fit, long endIndex)
    {
        var rhythm = RhythmOf(bins, fit, whole.Length / 2, endIndex);
        IntervalSoFarSeconds = rhythm.MedianIntervalSeconds;

        // Early beats that pass for second waves make the full ones differ; each kind by itself agrees.
        eitherCount = finder.CopyOfEither(either);
        var apart = double.NaN;
        if (eitherCount > 0)
        {
            shape.Judge(finder.Course.Volumes, either.AsSpan(0, eitherCount), 0.5 * ComparedSeconds() * design.BinRateHz);
            apart = shape.Agreement;
        }

        shape.Judge(finder.Course.Volumes, finder.Rises, ComparedSeconds() * design.BinRateHz);
        likeness = double.MaxNumber(shape.Agreement, apart);
        return rhythm;
    }

    // The slow part takes half of a slow pulse's first wave away and bends what is left: its beats are seen with less taken.
    private ReadOnlySpan<double> WholeWave(SmoothedBins bins, in RatioFit fit, ReadOnlySpan<double> window, Span<double> room)
    {
        var interval = finder.RepeatsWell ? finder.PeriodSeconds : finder.IntervalSeconds;
        if (fit.IsSeparated || fit.Lines > 0 || !(fit.IsWithoutFirstWave || 60 / interval < design.Options.SlowPulsePerMinute))
        {
            return window;
        }

        var basis = design.SlowOfSlowPulse(fit.WindowSeconds);
        var whole = room[..(2 * basis.Length)];
        bins.CopyNewest(whole);
        basis.Remove(whole);
        return whole;
    }

    private Rhythm RhythmOf(SmoothedBins bins, in RatioFit fit, int length, long endIndex)
    {
        var end = bins.NewestBin + 1.0;
        var isSound = !hasRed || fit.Disagreement <= design.Options.SoundDisagreement;
        train.Take(finder.AllRises, end - length, end, isSound, fit.WindowSeconds == design.Options.LongestWindowSeconds && !ArePairsOther(), fit.Lines > 0 || fit.IsSeparated);
        var averaged = design.Options.AveragingSeconds * design.BinRateHz;
        var window = RateWindow.Of(end - 1 - finder.UnseenBins, BinOf(endIndex), train.SoundFrom, averaged);
        return bins.Gaps.AnyBetween(window.From, end)
            ? Rhythm.AcrossGaps(train.Rises, window, design.BinRateHz, bins.Gaps, finder.UsualIntervalSeconds * design.BinRateHz)
            : WithDueBeat(Rhythm.Of(train.Rises, window, design.BinRateHz, irregularitySoFar), window);
    }

    // The beat that is due counts; what it looks like is not known.
    private Rhythm WithDueBeat(in Rhythm seen, in RateWindow window)
    {
        if (!train.Expect(window.SeenTo, window.End))
        {
            return seen;
        }

        var rhythm = Rhythm.Of(train.Rises, window, design.BinRateHz, irregularitySoFar);
        return seen with { RatePerMinute = rhythm.RatePerMinute, RateSpreadPerMinute = rhythm.RateSpreadPerMinute };
    }

    // What was counted before by another verdict on the same waves is counted anew.
    private bool ArePairsOther() => (finder.Pairs != PairKind.None && finder.Pairs != lastPairs) || (finder.AreUneven && !wereUneven);

    private void Vote(double end, int length, in RatioFit fit)
    {
        if (hasRed && fit.Disagreement <= design.Options.SoundDisagreement && fit.WindowSeconds == design.Options.LongestWindowSeconds && fit.Lines == 0 && !fit.IsSeparated)
        {
            votes.Take(finder.AllRises, end - length, end);
        }
        else
        {
            votes.Skip();
        }
    }

    // In one light alone noise makes and hides weak beats in every tenth window: there windows would differ for ever.
    private bool IsCountDoubtful(SmoothedBins bins, in RatioFit fit, in Rhythm rhythm, double end) =>
        finder.IsDoubtful
        || (HasMovement(fit) && TwoWaves.AreTwo(rhythm, finder.PeriodSeconds))
        || (finder.Pairs != PairKind.EarlyBeat && AreTwoWaves(rhythm))
        || (hasRed && finder.IsUndecided && !finder.RepeatsWell && rhythm.Irregularity > Rhythm.LateAbove)
        || (hasRed && finder.Pairs == PairKind.None && TwiceAsLong.AreInTurn(finder.Rises))
        || (hasRed && UncountedWaves.AreIn(finder.Course.Slopes[..^1], finder.Rises, design.BinRateHz))
        || (hasRed && votes.DifferBehind(Math.Max(end - (design.Options.AveragingSeconds * design.BinRateHz), train.SoundFrom), bins.Gaps));

    private bool HasMovement(in RatioFit fit) => fit.IsSeparated || (hasRed && fit.Disagreement > design.Options.CoherentDisagreement);

    private bool AreTwoWaves(in Rhythm rhythm) =>
        (finder.RepeatsWell && TwoWaves.AreCounted(rhythm, finder.PeriodSeconds))
        || (finder.Periodicity >= LeastPairedPeriodicity && TwoWaves.HaveLongFronts(rhythm, finder.PeriodSeconds, finder.Course.Slopes[..^1], finder.Rises, design.BinRateHz));

    private double ComparedSeconds()
    {
        var known = double.IsNaN(IntervalSoFarSeconds) ? finder.IntervalSeconds : IntervalSoFarSeconds;
        var interval = double.IsNaN(known) ? UsualIntervalSeconds : known;
        return finder.RepeatsWell ? interval : Math.Max(interval, LeastComparedSeconds);
    }

    private double BinOf(double index) => (index - (0.5 * (design.SamplesPerBin - 1))) / design.SamplesPerBin;
}
