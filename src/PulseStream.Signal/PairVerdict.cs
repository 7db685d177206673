namespace PulseStream.Signal;

/// <summary>
/// Tells what comes in turn with the full beats of a window: their second waves, or early beats. An early beat is a beat of
/// the same heart: it comes a good deal before half the time, its front is as short as any other's, and it rises from where
/// full beats rise. A second wave has travelled to the end of the arteries and back: it is broader than the front, or the
/// front itself takes so much of the period that one beat fills all of it.
/// </summary>
internal static class PairVerdict
{
    /// <summary>No slower beat has two waves half a period apart, s.</summary>
    public const double LongestEvenPeriodSeconds = 1.6;

    /// <summary>How clearly fronts of one size differ in turn where they are two waves of one beat; <see cref="RisePairs.Contrast"/>.</summary>
    public const double LeastContrast = 5;

    // Every second beat early, at more than 126 a minute, is hardly a rhythm: early beats follow where the time between beats is long.
    // Where the fronts are those of beats, nobody can tell.
    private const double ShortestPeriodSeconds = 0.95;

    // Sooner than this no heart beats again, whose refractory time is 0.25 to 0.3 s, nor before half of an interval is over. Within that
    // time, up to its middle, nobody can tell.
    private const double SoonestSeconds = 0.3;
    private const double RefractorySeconds = 0.27;
    private const double SoonestEarlyShare = 0.27;

    // An early beat comes a tenth of an interval early at least; what comes later than that in turn with a steeper front is the
    // second half of one beat. Behind more than half a period it is the front.
    private const double LatestEarlyShare = 0.45;
    private const double LatestSecondShare = 0.56;

    // A beat of nearly the same height is told by its front alone.
    private const double FullShare = 0.93;

    // Blood comes within a tenth of the time from beat to beat where that is long; a front that takes more of what repeats is
    // that of one beat. The later the weaker front comes, the shorter the front of a beat would be that leaves time for it.
    private const double SlowFrontShare = 0.098;
    private const double SlowFrontDelayShare = 0.35;
    private const double SlowFrontSlope = 0.2;

    // Up to a ninth it may be a beat's own where weaker fronts that are narrower differ: second waves are the same share of their beats
    // each time, a heart throws out what has flowed in while it waited.
    private const double SurelySlowFrontShare = 0.107;
    private const double SteadyScatter = 0.1;

    // A wave that has travelled is not narrower than the one it came from, as a beat that throws less blood is. Where their
    // heights differ as well, or where two thirds of the blood have run off before it, the front may take as much of the time as
    // that of a vessel which empties slowly, if the beat comes early by a quarter and more.
    private const double NarrowerWave = 0.88;
    private const double LowFootOfNarrower = 0.33;
    private const double LongestFrontBesideNarrower = 0.12;
    private const double LatestNarrowerShare = 0.38;
    private const double LongFrontBeforeNarrower = 0.085;
    private const double LongFrontBeforeNarrowest = 0.075;
    private const double NarrowestWave = 0.77;

    // Second waves have been drawn with up to nine tenths of the first one's height; steeper than this they are hardly ever.
    private const double SteepestWaveShare = 0.75;

    // What rises from the foot of the full beats is one; second waves are found to rise from above an eighth, those of most fingers
    // from above three quarters, where half of the blood of the beat before has not run off yet. A weak one behind a quick front
    // is one where all of that has run off: the second wave is a part of it.
    private const double LowestFootShare = 0.1;
    private const double EmptyFootShare = 0.05;
    private const double HighestFootShare = 0.7;

    // Behind a front that takes this much of the time, a broader one from the foot may be the second wave of a narrow beat, with time between both.
    private const double LongFrontShare = 0.08;

    // Waves broaden on their way. In between, noise and the smoothing decide.
    private const double BroaderWave = 1.1;
    private const double NoBroaderWave = 0.95;

    // A usual second wave reaches a seventh of the front's steepness, now and then a fifth, without being broader than it.
    private const double SteepestUsualShare = 0.2;
    private const double UsualShare = 0.12;
    private const double HighestUsualFoot = 0.35;
    private const double LeastShare = 0.08;

    // A vessel that broadens a wave takes its steepness. Once valves have closed and their wave is past, behind a front that was quick,
    // nothing of the beat rises a third as steeply again from where two thirds of its blood have run off; second waves so late and so
    // low reach a quarter.
    private const double SteepBehindAll = 0.35;

    // Behind all second waves, and as far again as those scatter, a small wave with a quick front is a beat as well.
    private const double FarBehindSeconds = 0.1;

    // Less is still seen to come each time behind a quick front, of a beat that fell on the flank of the one before.
    private const double RippleShare = 0.04;

    // Both halves of a period as long to within an eighth: full beats and weaker ones, or two waves. Their height differs by more than breathing
    // makes of it, pair by pair, and the weaker is no broader: samples that are far apart make one of two equal fronts broader and less steep.
    private const double LargestEvenShare = 0.9;
    private const double LeastPeriodicityGain = 0.04;
    private const double BroaderEvenFront = 1.05;
    private const double LargestKnownEvenShare = 0.97;
    private const double DrawnOutFront = 1.3;

    // Weak beats of a heart that throws more and less in turn (pulsus alternans) come at half the time as well, with fronts as short as the
    // full ones', after most of the blood has run off; at a time when all of a beat's own waves are past, nobody can tell.
    private const double WeakestInTurn = 0.25;
    private const double HighestFootInTurn = 0.4;

    /// <summary>The verdict on pairs with the period of the window.</summary>
    /// <param name="pairs">The pairs.</param>
    public static PairKind Of(in RisePairs pairs)
    {
        var unlikely = pairs.SlopeShare < LeastShare ? PairKind.None : PairKind.SecondWave;
        if (pairs.SlopeShare < RippleShare || IsSooner(pairs, RefractorySeconds))
        {
            return unlikely;
        }

        if (pairs.SlopeShare > FullShare || pairs.DelayShare > LatestSecondShare)
        {
            return PairKind.None;
        }

        if (pairs.DelayShare > LatestEarlyShare && (pairs.Contrast < LeastContrast || pairs.SlopeShare < LeastShare || pairs.PeriodSeconds > Repetition.LongestPeriodSeconds))
        {
            return PairKind.None;
        }

        if (IsUsual(pairs))
        {
            return unlikely;
        }

        var isRapid = pairs.PeriodSeconds < ShortestPeriodSeconds;
        var isSoon = IsSooner(pairs, SoonestSeconds);
        var shape = ByShape(pairs);
        if (isRapid && isSoon)
        {
            return unlikely;
        }

        if (IsOfOneBeat(pairs))
        {
            return MayDiffer(pairs) && shape != PairKind.SecondWave ? PairKind.Either : unlikely;
        }

        return shape == PairKind.SecondWave ? unlikely : isRapid || isSoon || MayBeAWave(pairs) || MayBeNarrow(pairs) ? PairKind.Either : shape;
    }

    /// <summary>Whether what follows at half the time may be the second wave of a beat that repeats with twice the window's period.</summary>
    /// <param name="periodicityGain">How much better the window repeats with that than with the period.</param>
    /// <param name="isKnown">Whether it was seen so in the seconds before: heights may then be nearly the same for a while.</param>
    public static bool MayBeEven(double periodicityGain, bool isKnown) => isKnown || periodicityGain >= LeastPeriodicityGain;

    /// <summary>Whether it is, by its front.</summary>
    /// <param name="pairs">Pairs with twice the period.</param>
    /// <param name="isKnown">Whether it was seen so in the seconds before.</param>
    public static bool IsEvenSecondWave(in RisePairs pairs, bool isKnown)
    {
        var isEven = pairs.PeriodSeconds < LongestEvenPeriodSeconds
            && pairs.DelayShare > LatestEarlyShare
            && pairs.DelayShare < LatestSecondShare;
        var height = pairs.SlopeShare * pairs.SecondFrontSeconds / pairs.FrontSeconds;
        return isEven
            && (IsDrawnOut(pairs)
                || (isKnown
                    ? height < LargestKnownEvenShare
                    : height < LargestEvenShare
                        && pairs.Contrast > LeastContrast
                        && pairs.SecondFrontSeconds < BroaderEvenFront * pairs.FrontSeconds));
    }

    /// <summary>Whether what is as steep as most second waves comes when they do, or little later, from where most of the blood has run off: as a beat it would hardly throw any.</summary>
    /// <param name="pairs">The pairs.</param>
    public static bool IsUsual(in RisePairs pairs) =>
        pairs.SlopeShare < SteepestUsualShare
        && pairs.FootShare >= LowestFootShare
        && pairs.FootShare < HighestUsualFoot
        && pairs.DelaySeconds < ValveClosure.LatestWaveSeconds(pairs.PeriodSeconds) + FarBehindSeconds;

    /// <summary>Whether what follows at half the time may be the weaker beats of a heart that throws more and less in turn.</summary>
    /// <param name="pairs">Pairs of full and weaker fronts.</param>
    public static bool MayAlternate(in RisePairs pairs) =>
        pairs.DelayShare > LatestEarlyShare
        && pairs.DelayShare < LatestSecondShare
        && pairs.DelaySeconds > ValveClosure.LatestWaveSeconds(pairs.PeriodSeconds)
        && pairs.SlopeShare >= WeakestInTurn
        && pairs.FootShare < HighestFootInTurn
        && pairs.SecondFrontSeconds < BroaderEvenFront * pairs.FrontSeconds;

    // Beats that come evenly have fronts of one breadth, whatever they throw.
    private static bool IsDrawnOut(in RisePairs pairs) =>
        pairs.Contrast > LeastContrast && pairs.SecondFrontSeconds > DrawnOutFront * pairs.FrontSeconds;

    // While the aortic valve closes and the wave comes back, one as narrow as its front may be either, unless it is nearly a full beat.
    private static bool MayBeAWave(in RisePairs pairs) =>
        pairs.SlopeShare < SteepestWaveShare && pairs.DelaySeconds < ValveClosure.LatestWaveSeconds(pairs.PeriodSeconds);

    // Narrow behind a front that is long as well, or by a quarter and more, it may be the second wave of a beat that is drawn narrow.
    private static bool MayBeNarrow(in RisePairs pairs)
    {
        var late = pairs.DelaySeconds - ValveClosure.LatestWaveSeconds(pairs.PeriodSeconds);
        var breadth = pairs.SecondFrontSeconds / pairs.FrontSeconds;
        var front = pairs.FrontSeconds / pairs.PeriodSeconds;
        return pairs.SlopeShare < SteepestWaveShare
            && ((late < FarBehindSeconds && front >= LongFrontBeforeNarrower && breadth < NarrowerWave)
                || (front >= LongFrontBeforeNarrowest && breadth < NarrowestWave));
    }

    // The steeper of two waves of one beat may be the second.
    private static bool IsSooner(in RisePairs pairs, double seconds)
    {
        var share = Math.Min(pairs.DelayShare, 1 - pairs.DelayShare);
        return share < SoonestEarlyShare || share * pairs.PeriodSeconds < seconds;
    }

    private static bool IsOfOneBeat(in RisePairs pairs) =>
        (pairs.DelayShare > LatestEarlyShare && pairs.PeriodSeconds < LongestEvenPeriodSeconds)
        || pairs.FootShare > HighestFootShare
        || pairs.FrontSeconds >= LeastSlowFrontShare(pairs.DelayShare) * pairs.PeriodSeconds;

    private static bool MayDiffer(in RisePairs pairs) =>
        pairs.FootShare <= HighestFootShare
        && pairs.DelayShare <= LatestEarlyShare
        && (IsNarrower(pairs) || IsSteepAndAsShort(pairs) || IsFromTheFoot(pairs));

    private static bool IsFromTheFoot(in RisePairs pairs) =>
        pairs.FootShare < EmptyFootShare && pairs.FrontSeconds < SlowFrontShare * pairs.PeriodSeconds;

    private static bool IsNarrower(in RisePairs pairs)
    {
        if (!(pairs.SecondFrontSeconds < NarrowerWave * pairs.FrontSeconds))
        {
            return false;
        }

        var longest = pairs.SlopeShare >= SteepestUsualShare ? LongestFrontBesideNarrower : SurelySlowFrontShare;
        return pairs.FrontSeconds < SlowFrontShare * pairs.PeriodSeconds
            || (pairs.DelayShare <= LatestNarrowerShare
                && (pairs.Scatter >= SteadyScatter || pairs.FootShare < LowFootOfNarrower)
                && pairs.FrontSeconds < (longest - ShorterFor(pairs.DelayShare)) * pairs.PeriodSeconds);
    }

    // The front of a beat of nearly the same height is as short as any other's.
    private static bool IsSteepAndAsShort(in RisePairs pairs) =>
        pairs.SlopeShare >= SteepestUsualShare
        && pairs.SecondFrontSeconds < NoBroaderWave * pairs.FrontSeconds
        && pairs.FrontSeconds < SlowFrontShare * pairs.PeriodSeconds;

    private static double LeastSlowFrontShare(double delayShare) => SlowFrontShare - ShorterFor(delayShare);

    private static double ShorterFor(double delayShare) => SlowFrontSlope * Math.Max(0, delayShare - SlowFrontDelayShare);

    private static PairKind ByShape(in RisePairs pairs)
    {
        var breadth = pairs.SecondFrontSeconds / pairs.FrontSeconds;
        if (pairs.FootShare < LowestFootShare && breadth >= BroaderWave && pairs.FrontSeconds >= LongFrontShare * pairs.PeriodSeconds)
        {
            return PairKind.Either;
        }

        if (IsFromTheFoot(pairs))
        {
            return pairs.SlopeShare >= LeastShare ? PairKind.EarlyBeat : PairKind.Either;
        }

        if (pairs.SlopeShare < UsualShare)
        {
            return PairKind.SecondWave;
        }

        var late = pairs.DelaySeconds - ValveClosure.LatestWaveSeconds(pairs.PeriodSeconds);
        if (late > 0 && pairs.SlopeShare >= SteepBehindAll && pairs.FootShare < LowFootOfNarrower && pairs.FrontSeconds < LongFrontShare * pairs.PeriodSeconds)
        {
            return PairKind.EarlyBeat;
        }

        var isSteep = pairs.SlopeShare >= SteepestUsualShare;
        if (isSteep && (pairs.FootShare < LowestFootShare || breadth < NoBroaderWave))
        {
            return PairKind.EarlyBeat;
        }

        if (breadth < NarrowerWave)
        {
            return PairKind.EarlyBeat;
        }

        if (breadth >= BroaderWave)
        {
            return PairKind.SecondWave;
        }

        return late > FarBehindSeconds ? PairKind.EarlyBeat : PairKind.Either;
    }
}
