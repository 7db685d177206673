using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Turns the measurements of a second into a verdict; remembers what the calm finger looked like.</summary>
internal sealed class SecondJudge
{
    private readonly CalibrationCurve curve;
    private readonly JudgeOptions options;
    private readonly bool hasRed;
    private readonly CalmFinger calm;
    private readonly SaturationInterval interval;
    private readonly SinceCalm sinceCalm;
    private readonly Liveness liveness;
    private readonly PulseForm form;
    private readonly Presence presence;
    private readonly RateSureness rate;
    private readonly ReceivedLight received;
    private readonly DisagreementLimit disagreement;
    private readonly FormerFinger former;
    private readonly HandledFinger handled;
    private readonly LastingLikeness lasting;
    private int sinceDisturbance = int.MaxValue;
    private int soundSeconds;
    private bool hasLeft;

    public SecondJudge(CalibrationCurve curve, ReadingOptions reading, bool hasRed)
    {
        this.curve = curve;
        options = reading.Judge;
        this.hasRed = hasRed;
        calm = new(options, hasRed);
        interval = new(curve, options);
        liveness = new(options);
        sinceCalm = new(options);
        form = new(options, liveness);
        presence = new(options);
        rate = new(options, hasRed);
        former = new(options);
        handled = new(options.Jerk);
        lasting = new(options, hasRed);
        received = new(options, presence);
        disagreement = new(options);
    }

    /// <summary>Whether the second judged last had something in the clip.</summary>
    public bool HasFinger { get; private set; }

    /// <summary>Whether what pulses has shown that it is alive.</summary>
    public bool IsProven => liveness.IsShown || !hasRed;

    /// <summary>Leap of infrared up to which nothing follows from it in the next second, as a logarithm.</summary>
    public double LargestIdleLeap => calm.LargestLeapOfBeats;

    /// <summary>Judges the next second.</summary>
    public Second Judge(in SignalSecond second)
    {
        sinceDisturbance = sinceDisturbance == int.MaxValue ? sinceDisturbance : sinceDisturbance + 1;
        calm.See(second);
        if (calm.HasSamePeriod(second))
        {
            liveness.Trust();
        }

        liveness.See(second, form.IsIn(second));
        presence.See(second);
        var reasons = calm.WithLamp(second, ReasonsOf(second));
        HasFinger = reasons == Reasons.None
            || (((reasons & Reasons.NoFinger) == Reasons.None || !presence.IsLeft) && (HasFinger || ShowsFinger(second, reasons)));
        hasLeft |= presence.HasLeft;
        if (hasLeft && HasFinger && !presence.IsAway(second))
        {
            // Put back, it sits anew, in a light of its own. Light that stays away may be a finger that never left, and a leak.
            hasLeft = false;
            calm.Forget();
            handled.Forget();
            liveness.Forget();
        }

        if (reasons != Reasons.None)
        {
            liveness.Doubt();
            return new UnusableSecond(second.SecondIndex, received.WithEndStop(second, handled.With(second, reasons, presence)), PerfusionOf(second));
        }

        if (calm.HasOtherRatio(second))
        {
            liveness.Forget();
        }

        calm.Tell(second);
        if (!second.Fit.IsSeparated)
        {
            calm.Remember(second);
            sinceCalm.Remember(second);
            liveness.Remember(second);
            presence.Remember(second);
            handled.Remember(second);
            former.Remember(second);
        }

        return Usable(second);
    }

    // Still light may be air that has not been still for long enough to be called so: a finger comes on with a movement.
    private static bool ShowsFinger(in SignalSecond second, Reasons reasons) =>
        reasons != Reasons.MissingSamples && !Presence.IsFlat(second);

    private static double? PerfusionOf(in SignalSecond second) =>
        second.Fit.WindowSeconds > 0 && double.IsFinite(second.Pulse.PerfusionPercent) ? second.Pulse.PerfusionPercent : null;

    private Reasons ReasonsOf(in SignalSecond second)
    {
        var light = received.ReasonsOf(second);
        if (light != Reasons.None)
        {
            sinceDisturbance = 0;
            soundSeconds = 0;
            if (received.IsLongAir)
            {
                calm.Forget();
                handled.Forget();
                liveness.Forget();
            }

            return light;
        }

        if (second.Fit.WindowSeconds == 0 || (second.Pulse.BeatCount < options.LeastBeats && second.Fit.WindowSeconds < options.SettlingSeconds && !IsFormerFinger(second)))
        {
            return Presence.IsFlat(second) ? FlatReason(second) : received.IsTooBright(second) ? Reasons.Saturated : presence.IsGone ? Gone(second) : Settling(second);
        }

        var pulse = PulseReasons(second);
        if (pulse != Reasons.None)
        {
            soundSeconds = 0;
            return OrGone(second, pulse);
        }

        soundSeconds++;
        var reasons = calm.ReasonsOf(second);
        if (calm.IsKnown && calm.HasSamePeriod(second))
        {
            presence.SeePulse(second);
        }

        // A pulse told from movement is the window's: the finger that had it may have left since.
        return ((reasons & Reasons.Motion) != Reasons.None || (reasons != Reasons.None && second.Fit.IsSeparated) ? OrGone(second, reasons) : reasons)
            | RangeReason(second) | ChanceReason(second);
    }

    private bool IsSettling => sinceDisturbance <= options.SettlingSeconds;

    // What still disturbs a second is not left over from before.
    private Reasons Settling(in SignalSecond second) => Reasons.Settling | (hasRed ? calm.CauseBesideSettling(second) : Reasons.None);

    // What moves where the finger was may be a finger half off as well, and light that has come may be a lamp.
    private Reasons OrGone(in SignalSecond second, Reasons reasons) =>
        !presence.IsGone ? reasons
        : presence.HasLeft ? Gone(second)
        : Gone(second) | (reasons & Reasons.AmbientLight);

    private Reasons Gone(in SignalSecond second) => presence.Absence(second) | Reasons.Misplaced;

    private Reasons PulseReasons(in SignalSecond second)
    {
        var fit = second.Fit;
        var pulse = second.Pulse;
        if (!IsAboveNoise(fit))
        {
            return FlatReason(second);
        }

        var errorPercent = (fit.IsSeparated ? sinceCalm.Weigh(second).Fit.StandardError : fit.StandardError) * Math.Abs(curve.SlopeAt(fit.Ratio));
        if (hasRed
            && (ReceivedLight.IsOneTwice(second)
                || !(fit.Disagreement <= disagreement.LargestOf(fit, calm.IsKnown))
                || (fit.Lines > 0 && !(errorPercent <= options.LargestErrorBesideLinesPercent))))
        {
            return IsSettling ? Settling(second) : calm.CauseOfDisagreement(second);
        }

        if (hasRed && !(errorPercent <= (fit.IsSeparated ? options.LargestSeparatedErrorPercent : options.LargestErrorPercent)))
        {
            return fit.IsSeparated ? calm.CauseOfDisagreement(second) : calm.HasNewNoise(second) ? calm.CauseOfNewNoise(second) : form.HasBeats(pulse) ? Reasons.LowPerfusion | UnprovenFinger : calm.CauseOfStillness(second);
        }

        // Two lights show for themselves what movement does to them; a step looks like a beat to one.
        if (!hasRed && second.Light.AccelerationSwing > options.LargestAccelerationSwing)
        {
            sinceDisturbance = 0;
            return Reasons.Motion;
        }

        var isWave = IsWave(second);
        var likeness = lasting.Of(pulse, calm.IsSame(second));
        lasting.See(second, isWave, likeness);
        if (!(isWave && likeness >= LeastLikenessOf(second)))
        {
            return IsSettling ? Settling(second) : hasRed ? calm.CauseOfShape(second) : Reasons.Motion;
        }

        if (hasRed && calm.IsKnown && IsInFingersPlace(second))
        {
            // What was taken away as a line may have been the pulse's own first wave; what is left is then the lamp.
            return Reasons.Motion | Reasons.Misplaced | calm.LampJustTold(second);
        }

        return Reasons.None;
    }

    // What noise was left beside a pulse told from movement is in its standard error: most of it was movement too.
    private bool IsAboveNoise(in RatioFit fit) =>
        fit.PulseSize > (fit.IsSeparated ? 0 : options.SmallestPulseOverNoise * fit.NoiseSize);

    // Nothing pulses: air where the light has left the finger's level.
    private Reasons FlatReason(in SignalSecond second) =>
        presence.IsAway(second) ? presence.Absence(second) : calm.CauseOfStillness(second);

    // What is too weak to be called a pulse may be no finger's, unless one was seen before.
    private Reasons UnprovenFinger => calm.IsKnown ? Reasons.None : Reasons.Misplaced;

    // Blood comes faster than it goes or stays up for a shorter time than down.
    private bool IsWave(in SignalSecond second) =>
        !(60 / second.Pulse.PeriodSeconds > options.FastestPulsePerMinute)
        && !(hasRed && (liveness.IsLacking(second) || IsBesideItsLike(second)))
        && (form.IsIn(second) || (HasRhythm(second) && form.HasNoBack(second) && calm.IsSame(second)));

    // It does so beat after beat. The more it does so, the less alike the beats have to be.
    private double LeastLikenessOf(in SignalSecond second) =>
        HasRhythm(second) ? options.LeastLikeness
        : (IsKnownHere(second) && second.Fit.Lines == 0) || IsFormerFinger(second) || lasting.IsShownIn(second) ? options.LeastLikenessWithoutRhythm : options.LeastUnprovenLikeness;

    // Of two waves at one rate, one of which was taken away as a line, either may be the movement, as long as no pulse is known.
    private bool IsBesideItsLike(in SignalSecond second) => !calm.IsKnown && !second.Fit.IsRoomLight && form.IsBesideItsLike(second);

    // A finger keeps its R, or has a third harmonic, or keeps its height, rate and light while nothing is taken away; what does none of
    // these has taken its place until a finger is put on anew. One with the same front is asked once there are beats enough.
    private bool IsInFingersPlace(in SignalSecond second)
    {
        var third = second.Pulse.ThirdWaveShare;
        return calm.HasOtherRatio(second)
            && !(second.Fit.Lines == 0 && !second.Fit.IsSeparated && calm.IsSame(second))
            && (third < options.Form.LeastThirdWaveShareBesideBreathing || (double.IsNaN(third) && !calm.HasSameFront(second)));
    }

    private bool HasRhythm(in SignalSecond second) => second.Pulse.Periodicity >= options.LeastPeriodicity;

    // What is let pass of a finger that was seen before is let pass in its own light alone.
    private bool IsKnownHere(in SignalSecond second) => calm.IsKnown && !presence.IsAway(second);

    private bool IsFormerFinger(in SignalSecond second) => !calm.IsKnown && former.IsBack(second);

    // Shaking that looks like a few beats by chance looks so for one second; a heart without rhythm goes on.
    private Reasons ChanceReason(in SignalSecond second) =>
        hasRed && !IsKnownHere(second) && !HasRhythm(second) && soundSeconds < options.SoundSecondsWithoutRhythm && !lasting.IsShownIn(second) && !IsFormerFinger(second)
            ? Reasons.Settling | calm.LampBeside(second)
            : Reasons.None;

    private Reasons RangeReason(in SignalSecond second)
    {
        if (!hasRed)
        {
            return Reasons.None;
        }

        var margin = Math.Max(options.RangeMargin, 3 * second.Fit.StandardError);
        var isInside = second.Fit.Ratio >= curve.FromRatio - margin && second.Fit.Ratio <= curve.ToRatio + margin;
        return isInside ? Reasons.None : Reasons.OutOfRange;
    }

    private UsableSecond Usable(in SignalSecond second)
    {
        var perfusion = PerfusionOf(second);
        var warnings = (perfusion < options.LowPerfusionPercent ? Reasons.LowPerfusion : Reasons.None)
            | (rate.IsIrregular(second.Pulse) ? Reasons.Irregular : Reasons.None);
        return new(
            second.SecondIndex,
            hasRed ? interval.Of(second.Fit.IsSeparated ? sinceCalm.Weigh(second) : second, calm.LeakedRatio(second)) : null,
            rate.IsSure(second) ? second.Pulse.RatePerMinute : null,
            perfusion,
            warnings);
    }
}
