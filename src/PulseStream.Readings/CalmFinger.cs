using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>What the finger looked like while it could be believed: the pulse's height and the steady light of both channels.</summary>
internal sealed class CalmFinger
{
    // The height follows within some two seconds, as fast as a warming finger's pulse grows, and so does the noise.
    private const double HeightGain = 0.5;

    // Further back than any recording reaches, and no difference to it overflows.
    private const long NeverTold = long.MinValue / 2;
    private readonly JudgeOptions options;
    private readonly bool hasRed;
    private readonly CalmLight light;
    private readonly SeatedFinger seat;
    private readonly SlipWatch slip;
    private readonly LeaptLight leapt;
    private readonly DisturbanceCause cause;
    private double logHeight = double.NaN;
    private double ratio;
    private double toldRatio;
    private long toldSecond = NeverTold;
    private long creptSecond = NeverTold;
    private double periodSeconds;
    private double frontSteepness;
    private double noiseSize;
    private int otherHeightSeconds;
    private int heightWindowSeconds;
    private Reasons leakCause;

    public CalmFinger(JudgeOptions options, bool hasRed)
    {
        this.options = options;
        this.hasRed = hasRed;
        light = new(options);
        seat = new(options, light);
        slip = new(options, light);
        leapt = new(options);
        cause = new(options, light, leapt);
    }

    /// <summary>Whether a calm second has been seen since the finger came on.</summary>
    public bool IsKnown => !double.IsNaN(logHeight);

    private CalmPulse Pulse => IsKnown ? new(logHeight, ratio, periodSeconds) : CalmPulse.Unknown;

    /// <summary>Leap of infrared up to which it is no lamp's, as a logarithm: any, where no pulse is known.</summary>
    public double LargestLeapOfBeats => IsKnown ? leapt.LargestOfBeats(logHeight) : double.PositiveInfinity;

    /// <summary>The finger has left: the next one starts from nothing.</summary>
    public void Forget()
    {
        logHeight = double.NaN;
        toldSecond = NeverTold;
        toldRatio = 0;
        slip.Forget();
        seat.Forget();
        leapt.Forget();
        cause.Forget();
        leakCause = Reasons.None;
        otherHeightSeconds = 0;
    }

    /// <summary>Whether a window shows the pulse that was believed before: of its height and rate, in its light.</summary>
    public bool IsSame(in SignalSecond second) =>
        IsKnown
        && Math.Abs(Math.Log(second.Fit.PulseSize) - logHeight) < options.SameHeight
        && HasSamePeriod(second)
        && light.IsAsBright(second);

    /// <summary>Whether a wave comes about as much faster than it goes as the known pulse does.</summary>
    public bool HasSameFront(in SignalSecond second) => second.Pulse.FrontSteepness >= options.SameFrontShare * frontSteepness;

    /// <summary>Whether R is further from the one believed last than blood goes between two seconds that are believed.</summary>
    public bool HasOtherRatio(in SignalSecond second) => Math.Abs(second.Fit.Ratio - toldRatio) > options.LargestSeparatedJump;

    /// <summary>Whether there is far more noise in a window than the calm finger has: light that varies faster than any pulse passes for it, and what the lights disagree by hides in it.</summary>
    /// <param name="second">The second.</param>
    public bool HasNewNoise(in SignalSecond second) =>
        IsKnown && second.Fit.Lines == 0 && second.Fit.NoiseSize > options.NewNoiseTimes * noiseSize;

    /// <summary>Takes in the light of every second, believed or not.</summary>
    public void See(in SignalSecond second)
    {
        light.See(second);
        leapt.See(second, logHeight, IsKnown && light.RiseOf(second) > options.LeakRise);
        creptSecond = IsKnown && second.Fit.IsSeparated && HasCrept(second, options.CreptErrors) ? second.SecondIndex : creptSecond;
    }

    /// <summary>The reasons of a second, with a lamp among them where light has leapt.</summary>
    public Reasons WithLamp(in SignalSecond second, Reasons reasons) => leapt.WithLamp(second, reasons);

    /// <summary>A second was believed, told from movement or calm.</summary>
    public void Tell(in SignalSecond second)
    {
        cause.Tell(second);
        toldRatio = second.Fit.Ratio;
        toldSecond = second.SecondIndex;
    }

    /// <summary>Takes over what a believed second looked like.</summary>
    public void Remember(in SignalSecond second)
    {
        if (hasRed)
        {
            seat.Remember(second);
        }

        // Part of the pulse may have gone with a line: its height then speaks for no other second.
        if (second.Fit.Lines > 0)
        {
            return;
        }

        var height = Math.Log(second.Fit.PulseSize);
        ratio = second.Fit.Ratio;
        creptSecond = NeverTold;
        if (hasRed)
        {
            slip.Remember(second);
        }

        periodSeconds = second.Pulse.PeriodSeconds;
        frontSteepness = second.Pulse.FrontSteepness;
        if (!IsKnown)
        {
            Settle(second);
            light.Settle(second);
            noiseSize = second.Fit.NoiseSize;
            return;
        }

        light.Follow(second, Math.Exp(logHeight));
        noiseSize += HeightGain * (second.Fit.NoiseSize - noiseSize);
        otherHeightSeconds = 0;
        if (second.Fit.WindowSeconds > heightWindowSeconds)
        {
            Settle(second);
        }

        // Light that brightens while the pulse shrinks may be a leak: the height that it is measured by has to stay.
        if (height > logHeight || light.RiseOf(second) < options.LeakDoubtRise)
        {
            logHeight += HeightGain * (height - logHeight);
        }
    }

    // A short window takes more of a slow pulse away with the baseline: its height is only a first word.
    private void Settle(in SignalSecond second)
    {
        logHeight = Math.Log(second.Fit.PulseSize);
        heightWindowSeconds = second.Fit.WindowSeconds;
    }

    /// <summary>Reasons to doubt a second whose pulse is sound in itself.</summary>
    public Reasons ReasonsOf(in SignalSecond second)
    {
        if (!IsKnown)
        {
            return second.Fit.IsSeparated ? CauseOfDisagreement(second) : Reasons.None;
        }

        if (second.Fit.IsSeparated)
        {
            creptSecond = HasCrept(second, errors: 0) ? second.SecondIndex : creptSecond;
            return light.ChangeOver(second) > options.LargestLightChange || !HasSamePeriod(second) || HasJumped(second) || second.SecondIndex - creptSecond < options.CreptSeconds
                ? CauseOfDisagreement(second)
                : Reasons.None;
        }

        if (HasNewNoise(second) && HasJumped(second))
        {
            return CauseOfNewNoise(second);
        }

        if (second.Fit.Lines > 0 ? HasJumped(second) : HasLeapt(second))
        {
            return CauseOfDisagreement(second);
        }

        // Added light scales the pulse and leaves its rate alone; a line beside it may be movement's.
        leakCause = hasRed && ((IsLeaking(second) && ((HasOtherRatio(second) && Pulse.HasShrunkInBoth(second, options)) || !seat.IsUnharmed(second))) || (second.Fit.Lines > 0 && light.HasRisenOver(second))) ? CauseOfLeak(second) : Reasons.None;
        if (leakCause != Reasons.None)
        {
            return second.Fit.Lines > 0 ? leakCause | Reasons.Motion : leakCause;
        }

        if (hasRed && (seat.HasLeaked(second) || (second.Fit.Lines == 0 && slip.Sees(second))))
        {
            return Reasons.Misplaced;
        }

        var growth = Math.Log(second.Fit.PulseSize) - logHeight;
        if (second.Fit.WindowSeconds <= heightWindowSeconds && growth > options.LargestGrowth)
        {
            var isGradual = growth < options.LargestNewHeight;
            if ((isGradual || Math.Abs(second.Fit.Ratio - ratio) < options.SameRatio) && IsGrown(second))
            {
                Settle(second);
                return Reasons.None;
            }

            if (HasSameFront(second) && ++otherHeightSeconds > options.NewHeightSeconds)
            {
                TakeOtherHeight(second, isGradual);
            }

            return Reasons.Motion;
        }

        return Reasons.None;
    }

    // A pulse that stays many times as high as the known one is another finger's, which has to show itself anew.
    private void TakeOtherHeight(in SignalSecond second, bool isSameFinger)
    {
        if (isSameFinger)
        {
            logHeight = Math.Log(second.Fit.PulseSize);
        }
        else
        {
            Forget();
        }
    }

    // Veins that beat with the heart leave lights that nearly agree, in another pulse; blood that loses oxygen leaves infrared's.
    private bool HasLeapt(in SignalSecond second) =>
        second.Fit.Disagreement > options.UnprovenDisagreement
        && IsSoonAfterTold(second)
        && HasOtherRatio(second)
        && Math.Abs(Math.Log(second.Fit.PulseSize) - logHeight) > options.Slip.Shrink / 2;

    // Movement at the pulse's own rate can take the pulse's place and leave it for the movement, and so can veins for a line;
    // blood follows more slowly.
    private bool HasJumped(in SignalSecond second) =>
        Math.Abs(second.Fit.Ratio - toldRatio)
            > Math.Min(options.SeparatedJump + (options.SeparatedJumpPerSecond * (second.SecondIndex - toldSecond)), options.LargestSeparatedJump);

    private bool IsSoonAfterTold(in SignalSecond second) => second.SecondIndex - toldSecond < options.JumpSecondsWithoutHeight;

    // Step by step, a finger that slips while it moves takes R further than that. Its own blood may go there as well, but nothing
    // tells until the hand is still. Too uncertain to be told, a pulse may be so far away all the same, by enough of its errors.
    private bool HasCrept(in SignalSecond second, double errors) =>
        Math.Abs(second.Fit.Ratio - ratio) > Math.Max(options.LargestSeparatedDrift, errors * second.Fit.StandardError);

    // A warming finger: the same heart with the same front, in lights that agree as they would have to before any pulse was known.
    private bool IsGrown(in SignalSecond second) =>
        second.Fit.Lines == 0
        && second.Fit.Disagreement <= options.UnprovenDisagreement
        && (HasSamePeriod(second) || Pulse.IsSeenWhole(second, options))
        && second.Pulse.FrontSteepness >= options.Form.LeastFrontSteepness
        && HasSameFront(second);

    /// <summary>Whether a wave comes at the known pulse's rate.</summary>
    /// <param name="second">The second.</param>
    public bool HasSamePeriod(in SignalSecond second) => Pulse.HasSamePeriod(second, options);

    /// <summary>Why the two lights disagree.</summary>
    /// <param name="second">The second.</param>
    public Reasons CauseOfDisagreement(in SignalSecond second) => cause.OfDisagreement(second, Pulse);

    /// <summary>What varies faster than any pulse: a lamp, or what shakes; nothing tells.</summary>
    /// <param name="second">The second.</param>
    public Reasons CauseOfNewNoise(in SignalSecond second) => Reasons.AmbientLight | CauseOfDisagreement(second) | Reasons.Motion;

    /// <summary>Why a wave in which both lights agree is no pulse.</summary>
    /// <param name="second">The second.</param>
    public Reasons CauseOfShape(in SignalSecond second) => cause.OfShape(second, Pulse);

    /// <summary>What disturbs a second that has yet to settle: light that has come to the calm light, or a lamp.</summary>
    /// <param name="second">The second.</param>
    public Reasons CauseBesideSettling(in SignalSecond second) => cause.BesideSettling(second, Pulse);

    /// <summary>The lamp or the even movement that a second's line was, where all of what disturbs it is one.</summary>
    /// <param name="second">The second.</param>
    public Reasons LampBeside(in SignalSecond second) => cause.LampBeside(second, Pulse);

    /// <summary>The lamp beside which a second was believed that the window still holds some of.</summary>
    /// <param name="second">The second.</param>
    public Reasons LampJustTold(in SignalSecond second) => cause.LampJustTold(second);

    /// <summary>Why nothing pulses: a finger that was seen before in the same light has no pulse now, unless noise hides it; anything else may be no finger.</summary>
    public Reasons CauseOfStillness(in SignalSecond second) =>
        !IsKnown || Math.Abs(light.RiseOf(second)) >= options.LargestLightChange ? Reasons.NoPulse | Reasons.Misplaced
        : HasNewNoise(second) ? CauseOfNewNoise(second) : Reasons.NoPulse;

    /// <summary>How far blood's own R may lie from the one read, with its sign, in units of R: what is not yet enough to refuse the second for light that leaks past.</summary>
    /// <param name="second">A believed second.</param>
    public double LeakedRatio(in SignalSecond second) => hasRed && seat.IsKnown && !second.Fit.IsSeparated ? seat.LeakedRatio(second) : 0;

    // What was told while the light had risen stays told for as long as the window holds some of that light.
    private Reasons CauseOfLeak(in SignalSecond second) =>
        leakCause == Reasons.None || light.RiseOf(second) > options.LeakRise ? cause.OfLeak(second, Pulse) : leakCause;

    // Once seen it stays until the light is back, and has left the window.
    private bool IsLeaking(in SignalSecond second) =>
        (leakCause != Reasons.None && light.RiseOf(second) > options.LeakRise) || light.HasLeaked(second, logHeight);
}
