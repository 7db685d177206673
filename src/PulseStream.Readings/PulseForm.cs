using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Whether a wave has the form of blood that is thrown: a front, a crest, or overtones that nothing else has.</summary>
internal sealed class PulseForm(JudgeOptions options, Liveness liveness)
{
    private readonly BesideLines besideLines = new(options);

    /// <summary>Whether the wave of a second shows it for itself.</summary>
    /// <param name="second">The second.</param>
    public bool IsIn(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return pulse.FrontSteepness >= options.LeastFrontSteepness
            || (pulse.Crest >= options.LeastCrest && pulse.FrontSteepness >= LeastFrontBesideCrestOf(pulse))
            || (besideLines.LeavesFirstWave(second) && !liveness.HasLostFirstWave(second) && IsBlunt(pulse) && RepeatsWell(pulse) && pulse.Agreement >= options.LeastThirdWaveAgreement)
            || besideLines.LeavesPulse(second);
    }

    /// <summary>Whether a wave does not fall too fast to be a known pulse with a rhythm: room light on one of the pulse's harmonics takes that along, and its front with it.</summary>
    /// <param name="second">The second.</param>
    public bool HasNoBack(in SignalSecond second) =>
        second.Fit.IsRoomLight
        || second.Fit.IsPureLine
        || second.Pulse.FrontSteepness >= (IsSlow(second.Pulse, options) ? options.LeastFrontBesideSecondWave : options.LeastFrontBesideCrest);

    /// <summary>Whether there are beats: a pulse too weak for its noise still repeats, or its beats are alike; drift and noise do neither.</summary>
    /// <param name="pulse">The beats of a window.</param>
    public bool HasBeats(in WindowPulse pulse) =>
        pulse.Periodicity >= options.LeastPeriodicity || pulse.Agreement >= options.LeastIrregularAgreement;

    /// <summary>Whether a beat has the time for a second wave that is taller than its first, and then falls faster than it rose.</summary>
    /// <param name="pulse">The beats of a window.</param>
    /// <param name="options">The limits.</param>
    public static bool IsSlow(in WindowPulse pulse, JudgeOptions options) => pulse.PeriodSeconds > options.Liveness.SlowSwingPeriodSeconds;

    private double LeastFrontBesideCrestOf(in WindowPulse pulse) =>
        IsSlow(pulse, options) && RepeatsWell(pulse) ? options.LeastFrontBesideSecondWave : options.LeastFrontBesideCrest;

    private bool RepeatsWell(in WindowPulse pulse) => pulse.Periodicity >= options.LeastThirdWavePeriodicity;

    // A strong second wave makes a fast pulse nearly round; what has some of a third harmonic and breathes is none the less alive.
    private bool IsBlunt(in WindowPulse pulse) =>
        pulse.ThirdWaveShare >= options.LeastThirdWaveShare
        || (pulse.ThirdWaveShare >= options.LeastThirdWaveShareBesideBreathing && pulse.BreathingShare >= options.Liveness.LeastBreathingShare);
}
