namespace PulseStream.Signal;

/// <summary>
/// Whether weaker fronts that pass for second waves are as likely beats of their own: twice as many of them then, and no shape
/// tells which. The arteries that throw a wave back, and those it has to cross, draw it out; a heart throws beat after beat
/// with fronts as short as each other, or shorter where it had less time to fill.
/// </summary>
internal static class EarlyOrSecond
{
    // Every second beat early, at more than 126 a minute, is hardly a rhythm.
    private const double ShortestPeriodSeconds = 0.95;

    // Sooner no heart has filled again; later than in the middle no beat is early.
    private const double SoonestShare = 0.27;
    private const double LatestShare = 0.45;

    // No broader than the front of the full beat, as well as eight seconds tell.
    private const double NoBroader = 0.97;

    // A heart throws for 0.3 s at most where it beats twice in such a time (Weissler, Circulation 1968;37:149), and steeply for half of that.
    private const double LongestFrontSeconds = 0.155;

    // A heart cannot throw again before it has thrown, which its front shows, and has filled, which takes as long and a half; the
    // two bells that beats are drawn with (Tang, Sci Rep 2020;10:13883) are 2.0 widths apart, and hardly ever 2.6.
    private const double SoonestFronts = 2.35;
    private const double BeyondSecondWaveFronts = 2.6;

    // A usual second wave reaches a seventh of the front's steepness, those of fingers in open recordings up to 0.17 where they are
    // not broader. More than 0.45 behind the time of a second wave, or 0.7 at any time, is rare in one.
    private const double LeastShare = 0.17;
    private const double SteepShare = 0.45;
    private const double SteepestShare = 0.7;

    // A vessel that has emptied further than this has drawn nothing out: long fronts are then those of slow beats.
    private const double FilledShare = 0.3;

    // What rises from the middle of the beat before, or higher, does so in a vessel that empties slowly and draws all waves out: a narrow one
    // has not crossed it. Nearer to the crest, second waves of most fingers rise, and the crest hides how broad they are.
    private const double SlowVesselFootShare = 0.48;
    private const double NarrowBreadth = 0.8;
    private const double HighFootShare = 0.65;
    private const double CrestFootShare = 0.85;

    // What rises from the foot of the full beats behind a front that takes less than a tenth of the time is no part of the beat before;
    // nor is what comes so many widths of it later, twice as late as second waves do.
    private const double LatestSecondShare = 0.56;
    private const double EmptyFootShare = 0.05;
    private const double QuickFrontShare = 0.098;
    private const double FarBehindFronts = 6.3;

    // An early beat follows half an interval behind the beat before at the soonest, a quarter of a pair whose pause makes good for it, less
    // what noise bends.
    private const double SoonestOfPair = 0.245;

    // Pairs hardly hold more than 140 beats a minute. Their fronts share the time of two beats, and take a seventh of it at most where a vessel
    // draws them out, an eighth where it has emptied. A beat that throws less blood is steep for a shorter time than a full one, but not for
    // half of it. A usual second wave, half as tall and as long again as the front, looks four fifths as broad as it where it rises from the
    // middle of the fall; as far behind Weissler's time as that scatters, hardly a ninth less.
    private const double ShortestPairSeconds = 0.86;
    private const double LeastBreadth = 0.55;
    private const double LongestFrontOfPair = 0.14;
    private const double LongestFrontOfQuickVessel = 0.125;
    private const double NarrowOfPair = 0.77;
    private const double NarrowBehindAll = 0.88;
    private const double LateSeconds = 0.03;

    // Every second beat at 150 a minute.
    private const double ShortestOfGroupsSeconds = 0.8;

    // The beats of a group follow when the heart can beat again, from where the blood of the one before has run off, and the pause
    // before the first makes that one steeper, but not twice as steep.
    private const double LeastOfGroups = 0.55;

    // Beats of one heart have fronts of one breadth, to a fifth; a wave that has travelled is drawn out.
    private const double BroadestOfGroups = 1.2;

    // The pause that ends a group takes less than two of its intervals (Wenckebach periods: common practice): three beats take the time
    // of less than four, and each more than three eighths of two mean ones.
    private const double SoonestOfGroups = 0.375;

    /// <summary>Whether they are.</summary>
    /// <param name="pairs">Pairs with the period of the window.</param>
    public static bool AreAsLikelyBeats(in RisePairs pairs) => IsNarrow(pairs) || AreAsLikelyBeatsWithoutRhythm(pairs);

    /// <summary>The same where the window does not repeat: fronts that keep to their delay behind beats that keep to none are second waves, however narrow they are.</summary>
    /// <param name="pairs">Pairs with the mean interval of the beats.</param>
    public static bool AreAsLikelyBeatsWithoutRhythm(in RisePairs pairs) =>
        pairs.PeriodSeconds >= ShortestPeriodSeconds
        && pairs.DelayShare >= SoonestOfPair
        && pairs.DelayShare < LatestSecondShare
        && pairs.SlopeShare >= LeastShare
        && (IsOfNoOther(pairs) || (pairs.DelayShare >= SoonestShare && IsAsShort(pairs)));

    /// <summary>Whether fronts that keep to their delay behind beats that keep to none are those of a heart that beats in groups: its second and fourth beat keep to the one before as well.</summary>
    /// <param name="pairs">Pairs with the mean interval of the full fronts.</param>
    public static bool AreOfGroups(in RisePairs pairs) =>
        pairs.PeriodSeconds >= ShortestOfGroupsSeconds
        && pairs.DelaySeconds >= ValveClosure.SoonestBeatSeconds(pairs.PeriodSeconds)
        && pairs.DelayShare >= SoonestOfGroups
        && pairs.SlopeShare >= LeastOfGroups
        && pairs.FootShare < FilledShare
        && pairs.SecondFrontSeconds < BroadestOfGroups * pairs.FrontSeconds;

    // Steep for a shorter time than the front, as hardly a wave is that has travelled.
    private static bool IsNarrow(in RisePairs pairs) =>
        pairs.PeriodSeconds >= ShortestPairSeconds
            && pairs.DelayShare >= SoonestOfPair
            && pairs.DelayShare < LatestShare
            && pairs.SlopeShare >= LeastShare
            && pairs.FrontSeconds < LongestFrontOfPair * pairs.PeriodSeconds
            && pairs.SecondFrontSeconds >= LeastBreadth * pairs.FrontSeconds
            && pairs.SecondFrontSeconds < Narrowest(pairs) * pairs.FrontSeconds;

    private static double Narrowest(in RisePairs pairs)
    {
        var fronts = pairs.DelaySeconds / pairs.FrontSeconds;
        return IsOfQuickVessel(pairs) && fronts > BeyondSecondWaveFronts ? NoBroader
            : pairs.DelaySeconds > ValveClosure.LatestWaveSeconds(pairs.PeriodSeconds) + LateSeconds ? NarrowBehindAll
            : fronts > SoonestFronts ? NarrowOfPair
            : 0;
    }

    private static bool IsOfQuickVessel(in RisePairs pairs) =>
        pairs.FootShare < FilledShare && pairs.FrontSeconds < LongestFrontOfQuickVessel * pairs.PeriodSeconds;

    private static bool IsOfNoOther(in RisePairs pairs) =>
        (pairs.FootShare < EmptyFootShare && pairs.FrontSeconds < QuickFrontShare * pairs.PeriodSeconds)
        || pairs.DelaySeconds > FarBehindFronts * pairs.FrontSeconds;

    private static bool IsAsShort(in RisePairs pairs)
    {
        var breadth = pairs.SecondFrontSeconds / pairs.FrontSeconds;
        var fronts = pairs.DelaySeconds / pairs.FrontSeconds;
        return pairs.DelayShare < LatestShare
            && breadth < NoBroader
            && pairs.FrontSeconds < LongestFrontSeconds
            && fronts > SoonestFronts
            && (IsSteep(pairs, fronts) || IsUnbent(pairs, breadth));
    }

    private static bool IsSteep(in RisePairs pairs, double fronts) =>
        pairs.SlopeShare >= SteepestShare || (pairs.SlopeShare >= SteepShare && fronts > BeyondSecondWaveFronts && pairs.FootShare >= FilledShare);

    private static bool IsUnbent(in RisePairs pairs, double breadth) =>
        pairs.FootShare < CrestFootShare && pairs.FootShare >= (breadth < NarrowBreadth ? SlowVesselFootShare : HighFootShare);
}
