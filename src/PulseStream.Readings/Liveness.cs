using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Tells a living pulse from something that swings in the clip: by a third harmonic in a wave that is not steady, and by what breathes beside it.</summary>
internal sealed class Liveness(JudgeOptions options)
{
    private readonly LivenessOptions limits = options.Liveness;
    private bool isShown;
    private bool isDoubted;
    private int breathingSeconds;
    private int livelySeconds;
    private int swingingSeconds;
    private double swingingPeriod;
    private double swingingRatio;

    /// <summary>Whether what pulses has shown that it is alive; it is not asked again as long as it goes on.</summary>
    public bool IsShown => isShown && !isDoubted;

    /// <summary>A second was refused: what pulses from now on may be something else, until it is seen to come at the rate that it had.</summary>
    public void Doubt() => isDoubted = true;

    /// <summary>What pulses comes at the rate that it had before it was doubted: a heart keeps its rate while its finger is moved, what takes its place has one of its own.</summary>
    public void Trust() => isDoubted = false;

    /// <summary>Another finger may come, or what came has another R: it has to show it anew.</summary>
    public void Forget()
    {
        ForgetLife();
        swingingSeconds = 0;
    }

    /// <summary>Takes in every second, believed or not: what has been seen to swing, or evenly up and down, is asked for life where a window leaves it open.</summary>
    /// <param name="second">The second.</param>
    /// <param name="hasForm">Whether its wave has the form of blood that is thrown: a push gives it to a swing for a moment.</param>
    public void See(in SignalSecond second, bool hasForm)
    {
        if (!(second.Fit.Disagreement <= options.LargestDisagreement))
        {
            return;
        }

        if ((Swings(second) || (!hasForm && IsEven(second))) && IsWhole(second))
        {
            swingingSeconds = IsSwingAsBefore(second) ? Math.Min(swingingSeconds + 1, limits.LongestSwingSeconds) : 1;
            swingingPeriod = second.Pulse.PeriodSeconds;
            swingingRatio = second.Fit.Ratio;
            livelySeconds = Math.Max(0, livelySeconds - 1);
        }
        else if (ShowsLife(second))
        {
            swingingSeconds = Math.Max(swingingSeconds - 1, 0);
        }
    }

    /// <summary>Takes in a believed second.</summary>
    public void Remember(in SignalSecond second)
    {
        if (isDoubted && isShown && !IsPart(second))
        {
            ForgetLife();
        }

        isDoubted &= IsPart(second);
        breathingSeconds = Math.Max(0, breathingSeconds + (Breathes(second) ? 1 : -1));
        livelySeconds = HasThirdWave(second) && IsUnsteady(second) ? livelySeconds + 1 : livelySeconds;
        isShown |= livelySeconds >= limits.ProvingLifeSeconds || breathingSeconds >= limits.ProvingBreathSeconds;
    }

    /// <summary>Something that swings in the clip: a wave of two harmonics at most, or of a steady rate and shape, and nothing that breathes beside it.</summary>
    /// <remarks>A breath is longer than a short window, in which a third harmonic is not well known either.</remarks>
    public bool IsLacking(in SignalSecond second) =>
        !(IsPart(second) ? isShown : IsShown)
        && (HasNoFirstWave(second)
            || IsUntold(second)
            || Swings(second)
            || (IsSwingAsBefore(second) && (swingingSeconds > 1 || !ShowsLife(second))));

    /// <summary>Whether there is more of a third harmonic than of the first in a wave that nothing was taken away from: its beats were found at another rate than its own. The two waves of a beat, four tenths of it apart, do the same to its first harmonic.</summary>
    public bool HasLostFirstWave(in SignalSecond second) => second.Fit.Lines == 0 && HasNoFirstWave(second);

    private bool HasNoFirstWave(in SignalSecond second) =>
        second.Pulse.ThirdWaveShare > limits.MostThirdWaveShare && !second.Pulse.HasSecondWaves && !second.Fit.IsWithoutFirstWave;

    /// <summary>Whether breathing is seen beside a wave by more than drift and a height that wavers look like it.</summary>
    /// <param name="pulse">The beats of a window.</param>
    public bool BreathesClearly(in WindowPulse pulse) => pulse.BreathingShare >= limits.LeastBreathingShareBesideRound * LeakOfSlow(pulse);

    /// <summary>Share of a third harmonic that the smoothing leaves, and of what a swing shows of one: of more than three beats a second less than half.</summary>
    /// <param name="pulse">The beats of a window.</param>
    public double LeftBySmoothing(in WindowPulse pulse) => pulse.PeriodSeconds < limits.RapidSwingPeriodSeconds ? 0.5 : 1;

    /// <summary>Whether the beats of a wave scatter more than anything leaves whose rate drifts smoothly; true where nobody measured it, beside a pulse that is known to live.</summary>
    /// <param name="second">The second.</param>
    public bool Scatters(in SignalSecond second) => IsMoreThanSteady(second, limits.UnsteadyShareOfRound * ShareOfFewBeats(second));

    // What was seen of life was of something else.
    private void ForgetLife()
    {
        isShown = false;
        breathingSeconds = 0;
        livelySeconds = 0;
    }

    // Neither a period nor beats enough to know their harmonics: nothing in it is known of a heart.
    private bool IsUntold(in SignalSecond second) =>
        IsWhole(second) && double.IsNaN(second.Pulse.PeriodSeconds) && double.IsNaN(second.Pulse.ThirdWaveShare);

    // Something that swings keeps its rate and its R.
    private bool IsSwingAsBefore(in SignalSecond second) =>
        swingingSeconds > 0
        && Math.Abs(Math.Log(second.Pulse.PeriodSeconds / swingingPeriod)) < options.SamePeriod
        && Math.Abs(second.Fit.Ratio - swingingRatio) < options.SeparatedJump;

    private bool IsEven(in SignalSecond second) => Math.Abs(second.Pulse.Crest) < limits.EvenCrest;

    private bool ShowsLife(in SignalSecond second) => (HasThirdWave(second) && IsUnsteady(second)) || Breathes(second);

    private bool Swings(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return IsSteady(second)
            || IsTooRound(second)
            || (!IsWhole(second)
                ? pulse.ThirdWaveShare < LeftBySmoothing(pulse) * limits.UnsureThirdWaveShare
                : pulse.ThirdWaveShare < LeftBySmoothing(pulse) * limits.SwingingThirdWaveShare && pulse.BreathingShare < limits.LeastBreathingShare * LeakOfSlow(pulse));
    }

    // A slow wave leaks twice as much into what is looked at for breathing, and a slower one all of itself.
    private double LeakOfSlow(in WindowPulse pulse) =>
        pulse.PeriodSeconds > limits.LongestPeriodBesideBreathSeconds ? double.PositiveInfinity
        : pulse.PeriodSeconds > limits.SlowSwingPeriodSeconds ? 2
        : 1;

    // What swings or turns may have any harmonics, but keeps its rate and its shape as no heart does. Noise is little of either.
    private bool IsSteady(in SignalSecond second) =>
        (second.Pulse.UnsteadyShare < LeastOfBlunt(second) || IsNoiseAlone(second)) && !IsMoreThanSteady(second) && !Breathes(second);

    // Of all but a slow pulse, harmonics beyond the smoothing are taken for noise.
    private bool IsNoiseAlone(in SignalSecond second) =>
        !double.IsNaN(second.Pulse.UnsteadyShare)
        && second.Pulse.PeriodSeconds > limits.SlowSwingPeriodSeconds
        && second.Fit.NoiseSize < limits.LargestNoiseBesideSteadiness * second.Fit.PulseSize;

    // A few beats leave the bends of a rate that drifts as much as jitter does.
    private bool IsUnsteady(in SignalSecond second) => second.Fit.WindowSeconds >= limits.ProvingWindowSeconds && IsMoreThanSteady(second);

    private bool IsMoreThanSteady(in SignalSecond second) => IsMoreThanSteady(second, LeastUnsteadyShareOf(second));

    private bool IsMoreThanSteady(in SignalSecond second, double least)
    {
        var share = second.Pulse.UnsteadyShare;
        return !((share * share) - NoiseVarianceOf(second) < least * least);
    }

    private double LeastUnsteadyShareOf(in SignalSecond second) =>
        IsThrown(second.Pulse) ? Math.Min(limits.LeastUnsteadyShareOfThrown, LeastOfBlunt(second)) : LeastOfBlunt(second);

    private double LeastOfBlunt(in SignalSecond second) => limits.LeastUnsteadyShare * ShareOfFewBeats(second);

    private double ShareOfFewBeats(in SignalSecond second) =>
        Math.Min(1, second.Fit.WindowSeconds / second.Pulse.PeriodSeconds / limits.BeatsOfUnsteadyShare);

    // The overtones of a steep front lie beyond the smoothing and pass for noise. What the lights differ by beyond R is noise alone, of
    // either, and as large in infrared as in red.
    private double NoiseVarianceOf(in SignalSecond second)
    {
        var fit = second.Fit;
        var beyond = fit.NoiseSize / fit.PulseSize;
        var white = fit.StandardError * fit.StandardError * limits.FreedomPerSecond * fit.WindowSeconds / (1 + (fit.Ratio * fit.Ratio));
        return IsThrown(second.Pulse) ? Math.Min(beyond * beyond, white) : beyond * beyond;
    }

    private bool IsThrown(in WindowPulse pulse) =>
        pulse.FrontSteepness >= options.Form.LeastFrontSteepness
        && pulse.ThirdWaveShare >= (pulse.PeriodSeconds < options.Form.LongestPeriodWithoutThirdWaveSeconds ? 0.5 : 1) * limits.ThrownThirdWaveShare;

    private bool HasThirdWave(in SignalSecond second) =>
        !HasLostFirstWave(second)
        && !IsTooRound(second)
        && !double.IsNaN(second.Pulse.ThirdWaveShare)
        && (second.Pulse.ThirdWaveShare >= options.Form.LeastThirdWaveShareBesideBreathing
            || (IsWhole(second) && second.Pulse.ThirdWaveShare >= limits.UnsureThirdWaveShare));

    private bool Breathes(in SignalSecond second) =>
        IsWhole(second)
        && !IsTooRound(second)
        && second.Pulse.BreathingShare >= limits.LeastBreathingShareBesideSwing * LeakOfSlow(second.Pulse)
        && !(second.Pulse.PeriodSeconds > limits.SlowSwingPeriodSeconds && second.Pulse.UnsteadyShare < LeastUnsteadyShareOf(second));

    // The slower a pulse, the more of its front is in its third harmonic. Where more or fewer waves were counted than repeat, it is not the beats'.
    private bool IsTooRound(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return !IsUnevenlyThrown(second)
            && pulse.Periodicity >= options.LeastPeriodicity
            && Math.Abs(Math.Log(pulse.PeriodSeconds * pulse.RatePerMinute / 60)) < options.LargestRateMiss
            && !BreathesClearly(pulse)
            && pulse.ThirdWaveShare < Math.Min(limits.MostThirdWaveShareAsked, ThirdWaveOfBell(4 * Math.PI * limits.BluntestBeatSeconds / pulse.PeriodSeconds));
    }

    // What swings comes as fast as it goes however it is bent, and what turns keeps its rate: a front in a rate that is not steady is neither.
    private bool IsUnevenlyThrown(in SignalSecond second) =>
        second.Pulse.FrontSteepness >= limits.FrontOfRound
        && second.Pulse.ThirdWaveShare >= limits.ThirdWaveShareOfRound
        && Scatters(second);

    private static double ThirdWaveOfBell(double turns) => Math.Exp(-turns * turns);

    // What a line or a movement was taken away from has left some of its rate and form with them: it was believed for the known pulse's sake.
    private static bool IsPart(in SignalSecond second) => second.Fit.IsSeparated || second.Fit.Lines > 0;

    private bool IsWhole(in SignalSecond second) => second.Fit.WindowSeconds >= options.SettlingSeconds;
}
