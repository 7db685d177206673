using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Whether a wave has the form of blood that is thrown: a front, a crest, or overtones that nothing else has.</summary>
internal sealed class PulseForm(JudgeOptions options, Liveness liveness)
{
    private readonly BesideLines besideLines = new(options);
    private readonly FormOptions limits = options.Form;

    /// <summary>Whether the wave of a second shows it for itself.</summary>
    /// <param name="second">The second.</param>
    public bool IsIn(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return (!IsTooShort(pulse)
                && !IsDip(pulse)
                && (pulse.FrontSteepness >= limits.LeastFrontSteepness
                    || (pulse.Crest >= limits.LeastCrest && pulse.FrontSteepness >= LeastFrontBesideCrestOf(pulse))
                    || (besideLines.LeavesFirstWave(second) && !liveness.HasLostFirstWave(second) && HasOvertones(second))))
            || besideLines.LeavesPulse(second);
    }

    /// <summary>Whether a line was taken away at the rate of the wave itself.</summary>
    /// <param name="second">The second.</param>
    public bool IsBesideItsLike(in SignalSecond second) => !besideLines.LeavesFirstWave(second);

    /// <summary>The front, the crest or the overtones of a wave, whichever is most.</summary>
    /// <param name="pulse">The beats of a window.</param>
    public static double ShapeOf(in WindowPulse pulse) => double.MaxNumber(Math.Max(pulse.FrontSteepness, pulse.Crest), Math.Min(pulse.ThirdWaveShare, 1));

    /// <summary>Whether a wave does not fall too fast to be a known pulse with a rhythm: room light on one of the pulse's harmonics takes that along, and its front with it.</summary>
    /// <param name="second">The second.</param>
    public bool HasNoBack(in SignalSecond second) =>
        second.Fit.IsRoomLight
        || second.Fit.IsPureLine
        || (!IsTooShort(second.Pulse) && !IsDip(second.Pulse) && second.Pulse.FrontSteepness >= (IsSlow(second.Pulse, options) ? limits.LeastFrontBesideSecondWave : limits.LeastFrontBesideCrest));

    /// <summary>Whether there are beats: a pulse too weak for its noise still repeats, or its beats are alike; drift and noise do neither.</summary>
    /// <param name="pulse">The beats of a window.</param>
    public bool HasBeats(in WindowPulse pulse) =>
        pulse.Periodicity >= options.LeastPeriodicity || pulse.Agreement >= options.LeastIrregularAgreement;

    /// <summary>Whether a beat has the time for a second wave that is taller than its first, and then falls faster than it rose.</summary>
    /// <param name="pulse">The beats of a window.</param>
    /// <param name="options">The limits.</param>
    public static bool IsSlow(in WindowPulse pulse, JudgeOptions options) => pulse.PeriodSeconds > options.Liveness.SlowSwingPeriodSeconds;

    /// <summary>Whether a wave has little beyond its first harmonic, as the beats were counted: two waves a beat, counted as one or as two, have more.</summary>
    /// <param name="pulse">The beats of a window.</param>
    /// <param name="options">The limits.</param>
    public static bool IsRound(in WindowPulse pulse, JudgeOptions options) =>
        pulse.FrequencyHz * 60 / pulse.RatePerMinute <= options.Form.MostHarmonicOfRound;

    // A late crest makes blood go as fast as it came, or faster: what is known to live and has overtones may do so.
    private double LeastFrontBesideCrestOf(in WindowPulse pulse) =>
        (liveness.IsShown && pulse.ThirdWaveShare >= limits.LeastThirdWaveShareBesideBreathing) || (IsSlow(pulse, options) && RepeatsWell(pulse))
            ? limits.LeastFrontBesideSecondWave
            : limits.LeastFrontBesideCrest;

    private bool RepeatsWell(in WindowPulse pulse) => pulse.Periodicity >= limits.LeastThirdWavePeriodicity;

    // The rises of a round wave are not placed well enough to cut it into beats that are alike: that it repeats tells as much.
    private bool HasOvertones(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return (second.Fit.Lines > 0 || IsUpright(pulse))
            && ((IsBlunt(second) && RepeatsWell(pulse) && (IsRound(pulse, options) ? Math.Max(pulse.Agreement, pulse.Periodicity) : pulse.Agreement) >= limits.LeastThirdWaveAgreement)
                || (pulse.Agreement >= limits.LeastAgreementOfAlike && (pulse.ThirdWaveShare >= liveness.LeftBySmoothing(pulse) * limits.LeastThirdWaveShareOfAlike || IsBluntWithoutRhythm(second))));
    }

    // What shakes by chance breathes as little as it is alike, and is up for as long as down.
    private bool IsBluntWithoutRhythm(in SignalSecond second) =>
        IsBlunt(second) && IsRound(second.Pulse, options) && IsAlive(second) && (liveness.IsShown || second.Pulse.Crest >= options.Liveness.EvenCrest);

    // A breath is longer than a short window, and is not looked for beside a known pulse.
    private bool IsAlive(in SignalSecond second) =>
        liveness.IsShown || (second.Fit.WindowSeconds >= options.SettlingSeconds && liveness.BreathesClearly(second.Pulse));

    // A wave that falls far faster than it rises is no blood's, whatever its overtones; one that is up for as long as down has to
    // breathe, unless the pulse is known.
    private bool IsUpright(in WindowPulse pulse) =>
        pulse.FrontSteepness >= (pulse.Crest >= limits.LeastCrest ? LeastFrontBesideCrestOf(pulse) : limits.LeastFrontBesideSecondWave)
        && (pulse.Crest >= options.Liveness.EvenCrest
            || (pulse.Crest >= limits.LeastCrestBesideBreathing && !(pulse.BreathingShare < options.Liveness.LeastBreathingShare)));

    // What swings comes as fast as it goes; what turns, and leans as far, keeps its rate.
    private bool IsThrownFast(in SignalSecond second) => second.Pulse.FrontSteepness >= limits.LeastFrontOfFast && liveness.Scatters(second);

    // Blood that has no front does not come and go within so short a time.
    private bool IsTooShort(in WindowPulse pulse) =>
        !liveness.IsShown
        && pulse.FrequencyHz > limits.ShortWaveHz
        && pulse.FrontSteepness < limits.SurelyShortFront
        && pulse.Crest >= limits.SurelyShortCrest
        && pulse.FrequencyHz * pulse.PeriodSeconds > limits.SurelyShortHarmonic;

    private bool IsDip(in WindowPulse pulse) => pulse.Crest < limits.LeastCrestOfAny;

    // A strong second wave or a late crest makes a fast pulse nearly round; what has some of a third harmonic and breathes is none the less
    // alive, and of what is faster still the smoothing leaves none.
    private bool IsBlunt(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return pulse.ThirdWaveShare >= limits.LeastThirdWaveShare
            || (pulse.ThirdWaveShare >= limits.LeastThirdWaveShareBesideBreathing && (liveness.IsShown || pulse.BreathingShare >= options.Liveness.LeastBreathingShare))
            || (pulse.PeriodSeconds < limits.LongestPeriodWithoutThirdWaveSeconds && (pulse.Crest >= options.Liveness.EvenCrest || IsThrownFast(second)) && IsAlive(second));
    }
}
