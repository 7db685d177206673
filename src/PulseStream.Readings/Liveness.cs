using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Tells a living pulse from something that swings in the clip, by its third harmonic and by what breathes beside it.</summary>
internal sealed class Liveness(JudgeOptions options)
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
        IsShown |= HasThirdWave(second) || breathingSeconds >= options.ProvingBreathSeconds;
    }

    /// <summary>Something that swings in the clip: a wave of two harmonics at most, and nothing that breathes beside it.</summary>
    /// <remarks>A breath is longer than a short window, in which a third harmonic is not well known either.</remarks>
    public bool IsLacking(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return !IsShown
            && (!IsWhole(second)
                ? pulse.ThirdWaveShare < options.UnsureThirdWaveShare
                : pulse.ThirdWaveShare < options.SwingingThirdWaveShare
                    && pulse.BreathingShare < (IsSwing(pulse) ? options.LeastBreathingShareBesideSwing : options.LeastBreathingShare));
    }

    private bool HasThirdWave(in SignalSecond second) =>
        second.Pulse.ThirdWaveShare >= options.LeastThirdWaveShareBesideBreathing
        || (IsWhole(second) && !(second.Pulse.ThirdWaveShare < options.UnsureThirdWaveShare));

    private bool Breathes(in SignalSecond second) =>
        IsWhole(second) && second.Pulse.BreathingShare >= options.LeastBreathingShareBesideSwing;

    private bool IsWhole(in SignalSecond second) => second.Fit.WindowSeconds >= options.SettlingSeconds;

    // Below this rate the smoothing leaves every pulse a third harmonic.
    private bool IsSwing(in WindowPulse pulse) =>
        pulse.ThirdWaveShare < options.SureSwingThirdWaveShare && pulse.PeriodSeconds > options.SureSwingPeriodSeconds;
}
