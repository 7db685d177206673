using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Tells a living pulse from something that swings in the clip: by a third harmonic in a wave that is not steady, and by what breathes beside it.</summary>
internal sealed class Liveness(JudgeOptions options, int steadinessWindowSeconds)
{
    private int breathingSeconds;

    /// <summary>Whether what pulses has shown that it is alive; it is not asked again.</summary>
    public bool IsShown { get; private set; }

    /// <summary>Another finger may come, or what came has another R: it has to show it anew.</summary>
    public void Forget()
    {
        IsShown = false;
        breathingSeconds = 0;
    }

    /// <summary>Takes in a believed second.</summary>
    public void Remember(in SignalSecond second)
    {
        breathingSeconds = Math.Max(0, breathingSeconds + (Breathes(second) ? 1 : -1));
        IsShown |= (HasThirdWave(second) && IsUnsteady(second)) || breathingSeconds >= options.ProvingBreathSeconds;
    }

    /// <summary>Something that swings in the clip: a wave of two harmonics at most, or of a steady rate and shape, and nothing that breathes beside it.</summary>
    /// <remarks>A breath is longer than a short window, in which a third harmonic is not well known either.</remarks>
    public bool IsLacking(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return !IsShown
            && (IsSeveralWaves(second)
                || IsSteady(second)
                || (!IsWhole(second)
                    ? pulse.ThirdWaveShare < LeftBySmoothing(pulse) * options.UnsureThirdWaveShare
                    : pulse.ThirdWaveShare < LeftBySmoothing(pulse) * options.SwingingThirdWaveShare
                        && pulse.BreathingShare < (IsSwing(pulse) ? options.LeastBreathingShareBesideSwing : options.LeastBreathingShare)));
    }

    // A wave too fast for a pulse is taken for one of a third of its rate, whose first harmonic is missing; so it may be where a
    // line was taken away.
    private bool IsSeveralWaves(in SignalSecond second) => second.Fit.Lines == 0 && second.Pulse.ThirdWaveShare > options.MostThirdWaveShare;

    // What swings may have any three harmonics, but keeps its rate and its shape as no heart does. Noise is little of either.
    private bool IsSteady(in SignalSecond second) =>
        IsTelling(second)
        && second.Pulse.UnsteadyShare < 2 * LeastUnsteadyShareOf(second.Pulse)
        && !IsUnsteady(second)
        && !Breathes(second);

    private bool IsUnsteady(in SignalSecond second)
    {
        var noise = second.Fit.NoiseSize / second.Fit.PulseSize;
        var share = second.Pulse.UnsteadyShare;
        var least = LeastUnsteadyShareOf(second.Pulse);
        return IsTelling(second) && !((share * share) - (noise * noise) < least * least);
    }

    // Too few beats to know the third harmonic are too few as well to know well what three harmonics leave.
    private double LeastUnsteadyShareOf(in WindowPulse pulse) =>
        double.IsNaN(pulse.ThirdWaveShare) ? 2 * options.LeastUnsteadyShare : options.LeastUnsteadyShare;

    private bool IsTelling(in SignalSecond second) => second.Fit.WindowSeconds >= steadinessWindowSeconds;

    private bool HasThirdWave(in SignalSecond second) =>
        second.Pulse.ThirdWaveShare >= options.LeastThirdWaveShareBesideBreathing
        || (IsWhole(second) && !(second.Pulse.ThirdWaveShare < options.UnsureThirdWaveShare));

    // A slow wave leaks twice as much into what is looked at for breathing.
    private bool Breathes(in SignalSecond second) =>
        IsWhole(second)
        && second.Pulse.BreathingShare >= options.LeastBreathingShareBesideSwing * (second.Pulse.PeriodSeconds > options.SlowSwingPeriodSeconds ? 2 : 1);

    private bool IsWhole(in SignalSecond second) => second.Fit.WindowSeconds >= options.SettlingSeconds;

    // Of more than three beats a second the smoothing leaves less than half of a third harmonic, and of what a swing shows of one.
    private double LeftBySmoothing(in WindowPulse pulse) => pulse.PeriodSeconds < options.RapidSwingPeriodSeconds ? 0.5 : 1;

    // Below this rate the smoothing leaves every pulse a third harmonic.
    private bool IsSwing(in WindowPulse pulse) =>
        pulse.ThirdWaveShare < options.SureSwingThirdWaveShare && pulse.PeriodSeconds > options.SureSwingPeriodSeconds;
}
