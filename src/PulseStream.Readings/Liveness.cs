using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Tells a living pulse from something that swings in the clip, by its third harmonic and by what breathes beside it.</summary>
internal sealed class Liveness(JudgeOptions options)
{
    /// <summary>Whether what pulses has shown once that it is alive; it is not asked again.</summary>
    public bool IsShown { get; private set; }

    /// <summary>Another finger may come, or what came has another R: it has to show it anew.</summary>
    public void Forget() => IsShown = false;

    /// <summary>Takes in a believed second.</summary>
    public void Remember(in SignalSecond second) => IsShown |= Shows(second);

    /// <summary>Something that swings in the clip: a wave of two harmonics at most, and nothing that breathes beside it.</summary>
    /// <remarks>A breath is longer than a short window, in which a third harmonic is not well known either.</remarks>
    public bool IsLacking(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return !IsShown
            && (second.Fit.WindowSeconds < options.SettlingSeconds
                ? pulse.ThirdWaveShare < options.UnsureThirdWaveShare
                : pulse.ThirdWaveShare < options.SwingingThirdWaveShare
                    && pulse.BreathingShare < (IsSwing(pulse) ? options.LeastBreathingShareBesideSwing : options.LeastBreathingShare));
    }

    private bool Shows(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return pulse.ThirdWaveShare >= options.LeastThirdWaveShareBesideBreathing
            || (second.Fit.WindowSeconds >= options.SettlingSeconds
                && (!(pulse.ThirdWaveShare < options.UnsureThirdWaveShare) || pulse.BreathingShare >= options.LeastBreathingShareBesideSwing));
    }

    // Below this rate the smoothing leaves every pulse a third harmonic.
    private bool IsSwing(in WindowPulse pulse) =>
        pulse.ThirdWaveShare < options.SureSwingThirdWaveShare && pulse.PeriodSeconds > options.SureSwingPeriodSeconds;
}
