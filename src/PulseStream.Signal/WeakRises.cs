namespace PulseStream.Signal;

/// <summary>
/// Tells weak beats from second waves. A rise nearly as steep as a normal one is a beat; a weaker one where it comes later
/// than second waves do, or where the other beats fall at that delay: a beat that comes early rises from the flank of the
/// one before, a second wave comes with every beat.
/// </summary>
internal sealed class WeakRises(double binRateHz)
{
    // Second waves reach half the front's steepness, with noise somewhat more.
    private const double StrongShare = 0.6;

    // So much steeper than the other beats at that delay is no second wave.
    private const double WeakestShare = 0.36;

    // Behind the second wave nothing rises but a beat: those of bigeminy are found with 0.33 of the full ones' steepness.
    private const double LateShare = 0.3;

    private const double UsualIntervalSeconds = 0.8;

    // Where all of a slow beat is slow, its second wave comes late with it: 3.1 times as long after the front's steepest point as
    // the crest does with the two bells of Tang (Sci Rep 2020;10:13883), an early beat of the same shape 6 times.
    private const double SecondWaveFronts = 4;

    // The same by how wide the front is, where the crest is hidden: 2 times with those two bells, and second waves of pulses of 35
    // a minute come up to 3.1 times later; an early beat 3.4 times and more.
    private const double SecondWaveWidths = 3.3;

    // Where it hides the crest it makes the front look longer than it is; later than this share of a beat it never rises.
    private const double SecondWaveShare = 0.6;

    // A weak beat that comes early behind every full one, as in bigeminy, comes at the same delay each time to within this.
    private const double SameDelaySeconds = 0.06;
    private const double SameSlopeShare = 0.5;
    private const int LeastRecurrences = 2;
    private const double RecurringShare = 0.2;

    // A second wave begins above this share of its beat's height. Where it comes so much later than valves close, as the second
    // bell of a slow pulse may, a beat is told from it less strictly.
    private const double FootShare = 0.15;
    private const double LateFootShare = 0.25;
    private const double BeyondSeconds = 0.1;

    // Half a beat later nothing rises but a beat; its foot is all the less sure for the slow part that was taken away.
    private const double FarBeyondSeconds = 0.25;
    private const double FarFootShare = 0.5;

    // Sooner than this no beat is told from a second wave by where it rises from.
    private const double SoonestSeconds = 0.3;

    // A weak beat comes no sooner than the heart has emptied once: half a fast pulse's interval.
    private const double SoonestShare = 0.5;

    // Where the window ends within a beat the slow fit bends it: at 35 a minute what it makes rises 0.43 times as steeply.
    // A true beat is seen whole a second later.
    private const double EndSeconds = 0.45;

    // Less than this is a ripple, whatever the other beats do; a rise that comes once has to be more than a ripple of one beat.
    private const double RippleShare = 0.12;
    private const double LoneShare = 0.2;

    // A weak beat's front is as short as any other's, to a third, unless it comes on top of a second wave; what comes once, behind
    // all second waves, and takes half as long again is one that a pause has drawn out.
    private const double BroadWidths = 1.5;
    private const double BroadShare = 0.4;

    // A second wave that comes so many widths of the front later has travelled far and is wider than it. One that is narrower,
    // and as steep as this, may be a beat.
    private const double NarrowWaveWidths = 4.5;
    private const double NarrowWaveShare = 0.42;

    // So long holds two full beats of bigeminy and of the slowest pulse, and a pulse that grows or shrinks has hardly moved.
    // The second steepest rise in it is a full beat even where one jerk is steeper than all.
    private const double NearSeconds = 5;

    // Beats that have to show what usually comes at a delay.
    private const int LeastOthers = 3;
    private const double ClearSeconds = 0.1;
    private readonly int end = (int)Math.Ceiling(EndSeconds * binRateHz);
    private readonly int clear = Math.Max(1, (int)(ClearSeconds * binRateHz));
    private readonly double beyond = BeyondSeconds * binRateHz;
    private readonly double farBeyond = FarBeyondSeconds * binRateHz;
    private readonly double soonest = SoonestSeconds * binRateHz;
    private readonly int sameDelay = Math.Max(1, (int)(SameDelaySeconds * binRateHz));
    private readonly double[] beats = new double[64];
    private readonly RiseSteepness steepness = new(NearSeconds * binRateHz);
    private readonly bool[] isStrong = new bool[64];
    private readonly PauseRise pause = new(binRateHz);
    private double latestSecondWave;
    private double latestShare;
    private double soonestEarly;

    /// <summary>Whether what was dropped last comes again and again, later than second waves do, and rises from lower.</summary>
    public bool IsDoubtful { get; private set; }

    /// <summary>Whether what was dropped last may be an early beat of which too little is seen yet.</summary>
    public bool IsUndecided { get; private set; }

    /// <summary>What is known by other means has nothing that is doubtful.</summary>
    public void Dismiss()
    {
        IsDoubtful = false;
        IsUndecided = false;
    }

    /// <summary>Drops what is no beat; the count of what is left at the start of <paramref name="rises"/>.</summary>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises, in order; 64 at most.</param>
    /// <param name="intervalSeconds">The usual interval, s; NaN where unknown.</param>
    public int Drop(ReadOnlySpan<double> slopes, Span<double> rises, double intervalSeconds)
    {
        var interval = intervalSeconds > 0 ? intervalSeconds : UsualIntervalSeconds;
        latestSecondWave = ValveClosure.LatestWaveSeconds(interval) * binRateHz;
        soonestEarly = Math.Min(soonest, SoonestShare * interval * binRateHz);
        latestShare = SecondWaveShare * interval * binRateHz;
        MarkStrong(slopes, rises);
        Dismiss();
        var left = 0;
        var before = -1;
        var early = -1;
        for (var k = 0; k < rises.Length; k++)
        {
            if (isStrong[k] || k == early || (before >= 0 && (IsEarlyBeat(slopes, rises, before, k) || IsRecurring(slopes, rises, before, k))))
            {
                beats[left++] = rises[k];
            }

            if (isStrong[k])
            {
                before = k;
                early = pause.Find(slopes, rises, isStrong, k, interval * binRateHz);
            }
        }

        beats.AsSpan(0, left).CopyTo(rises);
        return left;
    }

    private void MarkStrong(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises)
    {
        steepness.Find(slopes, rises);
        var last = double.NegativeInfinity;
        for (var k = 0; k < rises.Length; k++)
        {
            isStrong[k] = steepness.Of(k) >= StrongShare * steepness.NormalAbout(k) || IsLateBeat(slopes, last, rises[k], k);
            last = isStrong[k] ? rises[k] : last;
        }
    }

    private bool IsLateBeat(ReadOnlySpan<double> slopes, double front, double rise, int k) =>
        steepness.Of(k) >= LateShare * steepness.NormalAbout(k)
        && rise - front >= LatestSecondWave(slopes, front)
        && !IsAtEnd(slopes, rise)
        && !IsDrawnOut(slopes, front, rise, steepness.NormalAbout(k));

    private double LatestSecondWave(ReadOnlySpan<double> slopes, double front)
    {
        var crest = (int)Math.Max(0, front);
        while (crest < slopes.Length && slopes[crest] > 0)
        {
            crest++;
        }

        var latest = Math.Min(SecondWaveFronts * (crest - front), latestShare);
        return Math.Max(latestSecondWave, front >= 0 ? Math.Min(latest, SecondWaveWidths * FrontWidth.BinsOf(slopes, front)) : latest);
    }

    private bool IsDrawnOut(ReadOnlySpan<double> slopes, double front, double rise, double normal) =>
        slopes[(int)rise] < BroadShare * normal
        && front >= 0
        && rise - front >= LatestSecondWave(slopes, front) + beyond
        && FrontWidth.BinsOf(slopes, rise) > BroadWidths * FrontWidth.BinsOf(slopes, front);

    private static bool IsNarrow(ReadOnlySpan<double> slopes, double front, double rise)
    {
        var width = FrontWidth.BinsOf(slopes, front);
        return rise - front >= NarrowWaveWidths * width && FrontWidth.BinsOf(slopes, rise) < width;
    }

    private bool IsEarlyBeat(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int before, int k)
    {
        var slope = steepness.Of(k);
        var delay = (int)rises[k] - (int)rises[before];
        var isEarly = delay >= soonestEarly
            && slope >= LoneShare * steepness.NormalAbout(k)
            && slope - UsualSlope(slopes, rises, before, delay) >= WeakestShare * steepness.NormalAbout(k)
            && !IsDrawnOut(slopes, rises[before], rises[k], steepness.NormalAbout(k));
        var isBent = rises[k] >= slopes.Length - end;
        IsUndecided |= isEarly && isBent;
        return isEarly && !isBent;
    }

    // Again and again at one delay: told together from the second wave that comes so, one that is bent is then told like the others.
    private bool IsRecurring(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int before, int k)
    {
        var delay = (int)(rises[k] - rises[before]);
        if (delay < soonest || steepness.Of(k) < RippleShare * steepness.NormalAbout(k) || IsAtEnd(slopes, rises[k]))
        {
            return false;
        }

        int others = 0, alike = 0;
        for (var j = 0; j < rises.Length; j++)
        {
            var at = (int)rises[j] + delay;
            if (j != before && steepness.Of(j) >= StrongShare * steepness.NormalAbout(j) && at - sameDelay <= NextStrong(rises, j, slopes.Length - end))
            {
                others++;
                alike += SteepestNear(slopes, at) >= SameSlopeShare * steepness.Of(k) ? 1 : 0;
            }
        }

        return alike >= LeastRecurrences && 2 * alike > others && AreBeats(slopes, rises, delay, LatestSecondWave(slopes, rises[before]), IsNarrow(slopes, rises[before], rises[k]));
    }

    private bool AreBeats(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int delay, double latest, bool isNarrow)
    {
        Span<double> feet = stackalloc double[rises.Length];
        Span<double> shares = stackalloc double[rises.Length];
        var count = 0;
        var before = -1;
        for (var j = 0; j < rises.Length; j++)
        {
            if (before >= 0 && !isStrong[j] && Math.Abs(rises[j] - rises[before] - delay) <= sameDelay && !IsAtEnd(slopes, rises[j]))
            {
                feet[count] = RiseFoot.ShareOf(slopes, rises[before], rises[j], NextStrong(rises, j, slopes.Length), end);
                shares[count++] = steepness.Of(j) / steepness.NormalAbout(j);
            }

            before = isStrong[j] ? j : before;
        }

        feet = feet[..count];
        shares = shares[..count];
        feet.Sort();
        shares.Sort();
        var isLate = delay >= latest;
        var foot = feet[(count - 1) / 2];
        var isBeat = shares[count / 2] >= (isLate ? RecurringShare : WeakestShare)
            && foot < (delay >= latest + farBeyond ? FarFootShare : delay >= latest + beyond ? LateFootShare : FootShare);
        IsDoubtful |= !isBeat && ((isLate && foot < FarFootShare) || (isNarrow && shares[count / 2] >= NarrowWaveShare));
        return isBeat;
    }

    private bool IsAtEnd(ReadOnlySpan<double> slopes, double rise) => rise < end || rise >= slopes.Length - end;

    private double SteepestNear(ReadOnlySpan<double> slopes, int at)
    {
        var steepest = 0.0;
        for (var n = Math.Max(0, at - sameDelay); n <= at + sameDelay && n < slopes.Length; n++)
        {
            steepest = Math.Max(steepest, slopes[n]);
        }

        return steepest;
    }

    // Median over the other strong beats that are alone for so long; infinite where they are too few to tell.
    private double UsualSlope(ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, int own, int delay)
    {
        Span<double> others = stackalloc double[rises.Length];
        var count = 0;
        for (var j = 0; j < rises.Length; j++)
        {
            var at = (int)rises[j] + delay;
            if (j != own && isStrong[j] && at + clear < NextStrong(rises, j, slopes.Length))
            {
                others[count++] = slopes[at];
            }
        }

        others = others[..count];
        others.Sort();
        return count < LeastOthers ? double.PositiveInfinity : others[count / 2];
    }

    private double NextStrong(ReadOnlySpan<double> rises, int j, double length)
    {
        for (var n = j + 1; n < rises.Length; n++)
        {
            if (isStrong[n])
            {
                return rises[n];
            }
        }

        return length;
    }
}
