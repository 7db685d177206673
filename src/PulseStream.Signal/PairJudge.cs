namespace PulseStream.Signal;

/// <summary>Judges what comes in turn with the fronts of a window, by the period with which it repeats, by twice that, or by one that is slower than any pulse's.</summary>
internal sealed class PairJudge(Repetition repetition, SignalDesign design)
{
    // Pairs are told from chance where the window repeats with them well, or those before did.
    private const double PairedPeriodicity = 0.72;
    private const double KnownPeriodicity = 0.5;

    // With fewer samples from front to front, those that fall between two make equal fronts differ in turn.
    private const double FewestBins = 9;
    private readonly PairFinder finder = new(design.BinRateHz);
    private readonly UnevenPairs uneven = new(design.BinRateHz, design.Options.LeastUnevenSpread);
    private (double PeriodSeconds, double Periodicity) slow;
    private double unevenSeconds;

    /// <summary>What comes behind each full front of the window, as far as it shows by itself.</summary>
    public PairKind Own { get; private set; }

    /// <summary>The pairs with the window's own period; their spreads are 0 where there are none.</summary>
    public RisePairs Found { get; private set; }

    /// <summary>Whether waves that are no beats now may have been some.</summary>
    public bool IsDoubtful { get; private set; }

    /// <summary>Whether what passes for second waves in this window may be beats, or the other way round.</summary>
    public bool AreAsLikelyBeats { get; private set; }

    /// <summary>Whether second waves come half a period behind the fronts, so that the window seems to repeat with both.</summary>
    public bool AreEven { get; private set; }

    /// <summary>Whether the window repeats otherwise than it seems.</summary>
    public bool AreOfAnotherPeriod => AreEven || slow.PeriodSeconds > 0 || unevenSeconds > 0;

    /// <summary>The period with which the window repeats, s; the mean interval of beats with second waves that keep no rhythm; NaN where there is neither.</summary>
    public double PeriodSeconds =>
        slow.PeriodSeconds > 0 ? slow.PeriodSeconds
        : unevenSeconds > 0 ? unevenSeconds
        : repetition.PeriodSeconds * (AreEven ? 2 : 1);

    /// <summary>Autocorrelation at that period, −1 to 1.</summary>
    public double Periodicity =>
        slow.PeriodSeconds > 0 ? slow.Periodicity
        : AreEven ? repetition.PeriodicityOfTwo
        : repetition.Periodicity;

    /// <summary>Autocorrelation at twice that period; 0 where it is not known.</summary>
    public double PeriodicityOfTwo => AreOfAnotherPeriod ? 0 : repetition.PeriodicityOfTwo;

    /// <summary>Whether each front has a second wave behind it without the window's repeating, as far as it shows by itself.</summary>
    public bool AreSurelyUneven { get; private set; }

    /// <summary>The same in the light of the windows before.</summary>
    public bool AreUneven { get; private set; }

    /// <summary>Whether a rise, by its number, is the weaker one of a pair.</summary>
    public bool IsSecond(int k) => AreUneven ? uneven.IsSecond(k) : finder.IsSecond(k);

    /// <summary>Forgets what was said of another window.</summary>
    public void Restart()
    {
        Own = PairKind.None;
        Found = default;
        IsDoubtful = false;
        AreAsLikelyBeats = false;
        AreEven = false;
        AreUneven = false;
        AreSurelyUneven = false;
        slow = default;
        unevenSeconds = 0;
    }

    /// <summary>What drowns in noise is not asked for pairs.</summary>
    public void Dismiss() => IsDoubtful = false;

    /// <summary>Judges the pairs of a window.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order; 64 at most.</param>
    /// <param name="repeatsWell">Whether the window repeats so well that its period is its interval.</param>
    /// <param name="before">What was said of the windows before; null where nothing is known of them.</param>
    /// <returns>What they are, in the light of the windows before.</returns>
    public PairKind Judge(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, bool repeatsWell, PairCourse? before)
    {
        if (before is { IsUnevenKnown: true })
        {
            JudgeUneven(slopes, rises, before);
        }

        var least = before is { IsKnown: true } ? KnownPeriodicity : PairedPeriodicity;
        if (Own == PairKind.None && repetition.Periodicity >= least && finder.TryFind(slopes, rises, repetition.PeriodSeconds, out var found))
        {
            Found = found;
            if (before?.Delays.KeepTime(found) ?? false)
            {
                Own = PairKind.SecondWave;
                return Own;
            }

            Own = PairVerdict.Of(found);
            AreAsLikelyBeats = Own == PairKind.SecondWave && !PairVerdict.IsUsual(found) && (PairVerdict.MayAlternate(found) || (before?.Delays.Scatter(found) ?? false) || EarlyOrSecond.AreAsLikelyBeats(found));
        }

        if (Own == PairKind.None)
        {
            JudgeEven(slopes, rises, least, before?.IsEvenKnown ?? false);
        }

        if (Own == PairKind.None && before is not null && !repeatsWell)
        {
            JudgeSlow(slopes, rises, least);
        }

        if (Own == PairKind.None && before is { IsUnevenKnown: false })
        {
            JudgeUneven(slopes, rises, before);
        }

        var kind = before?.Settle(Own) ?? Own;
        IsDoubtful = kind switch
        {
            PairKind.Either => true,
            PairKind.SecondWave => AreAsLikelyBeats || before is { IsDoubtful: true } or { WereAsLikelyBeats: true },
            PairKind.None => AreAsLikelyBeats || before is { WasUnsure: true } or { WereAsLikelyBeats: true },
            _ => false,
        };
        return kind;
    }

    private void JudgeEven(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, double least, bool isKnown)
    {
        var gain = repetition.PeriodicityOfTwo - repetition.Periodicity;
        var leastContrast = isKnown ? double.NegativeInfinity : PairVerdict.LeastContrast;
        if (!(repetition.PeriodicityOfTwo >= least && PairVerdict.MayBeEven(gain, isKnown) && finder.TryFind(slopes, rises, 2 * repetition.PeriodSeconds, out var found, leastContrast, PairVerdict.LongestEvenPeriodSeconds)))
        {
            return;
        }

        var isSecond = PairVerdict.IsEvenSecondWave(found, isKnown);
        AreEven = isSecond && repetition.PeriodSeconds * design.BinRateHz >= FewestBins;
        Own = AreEven ? PairKind.SecondWave : PairKind.None;
        AreAsLikelyBeats = AreEven ? PairVerdict.MayAlternate(found) : isSecond;
    }

    private void JudgeUneven(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, PairCourse before)
    {
        var isFound = uneven.TryFind(slopes, rises, before.IsUnevenKnown);
        AreSurelyUneven = uneven.AreSure;
        if (isFound && before.IsUnevenKnown)
        {
            Own = PairKind.SecondWave;
            AreUneven = true;
            AreAsLikelyBeats = uneven.MayBeOfGroups;
            unevenSeconds = uneven.IntervalSeconds;
        }
    }

    // Beats that come two by two may repeat more slowly than any pulse does.
    private void JudgeSlow(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, double least)
    {
        var (period, periodicity) = repetition.FindLonger();
        if (periodicity >= least && finder.TryFind(slopes, rises, period, out var found) && PairVerdict.Of(found) == PairKind.EarlyBeat)
        {
            Own = PairKind.EarlyBeat;
            slow = (period, periodicity);
        }
    }
}
