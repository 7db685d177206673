namespace PulseStream.Readings;

/// <summary>Limits between a living pulse and something that swings in the clip, each with its reason.</summary>
public sealed record LivenessOptions
{
    /// <summary>Third harmonic over the first above which it is none: no pulse's first wave is the smaller one, but three periods of a faster wave taken for one have none.</summary>
    public double MostThirdWaveShare { get; init; } = 1;

    /// <summary>Third harmonic over the first, as amplitudes, below which a wave is a swing, unless something breathes beside it: pulses of up to 180 a minute have 0.01 and more, swings up to 0.004.</summary>
    public double SwingingThirdWaveShare { get; init; } = 0.006;

    /// <summary>The same in a window shorter than the longest, where a swing may show 0.008.</summary>
    public double UnsureThirdWaveShare { get; init; } = 0.012;

    /// <summary>
    /// Standard deviation, s, of the bluntest beat: a bell of 0.22 s at half its height. Systole takes a quarter to a third of a second at any rate
    /// and all of its upstroke falls within (0.1 to 0.25 s, common practice), so a slow pulse shows more of the same front in its third harmonic. Such
    /// bells have exp(−(4πσ/T)²) of their first wave in their third one; less is a swing.
    /// </summary>
    public double BluntestBeatSeconds { get; init; } = 0.095;

    /// <summary>Third harmonic over the first that is asked for at most: a second wave may take four fifths of it away, bends by a quarter of a sine whose height and rate waver leave up to 0.03.</summary>
    public double MostThirdWaveShareAsked { get; init; } = 0.04;

    /// <summary>Skewness of the slope from which a rounder wave has a front that no swing has: however far a spring bends, it comes back as it went.</summary>
    public double FrontOfRound { get; init; } = 0.3;

    /// <summary>Third harmonic over the first that such a wave has at least.</summary>
    public double ThirdWaveShareOfRound { get; init; } = 0.01;

    /// <summary>What one shape at a rate that drifts smoothly leaves of it at least, root mean squares, where there are beats enough: of a wheel whose speed wanders up to 0.04.</summary>
    public double UnsteadyShareOfRound { get; init; } = 0.07;

    /// <summary>Breathing over such a swing, root mean squares, from which it is a finger's none the less: drift and a wave whose height wavers look like a breath of up to an eighth of it.</summary>
    public double LeastBreathingShareBesideRound { get; init; } = 0.15;

    /// <summary>Period, s, below which a pulse's third harmonic lies beyond the edge of the smoothing, and half as much of it tells it from a swing: 180 beats a minute.</summary>
    public double RapidSwingPeriodSeconds { get; init; } = 1.0 / 3;

    /// <summary>Breathing over the wave, root mean squares, below which a wave of two harmonics is not believed before any other was: a finger breathes by a tenth of its pulse and more, what a swinging wave leaks stays below 0.07.</summary>
    public double LeastBreathingShare { get; init; } = 0.08;

    /// <summary>The same beside a pure swing, where slow drift may look like breathing: up to 0.085 was seen of it.</summary>
    public double LeastBreathingShareBesideSwing { get; init; } = 0.12;

    /// <summary>
    /// What one shape at a rate that drifts smoothly leaves of a pulse at least, as a share, root mean squares: beats of a hundredth of jitter
    /// leave a twentieth and more, a pendulum and a wheel next to nothing, a fan whose speed wanders by a hundredth up to 0.04.
    /// </summary>
    public double LeastUnsteadyShare { get; init; } = 0.045;

    /// <summary>
    /// The same of a wave with a front and a third harmonic: a fan and a wheel whose speed wanders pass alike both ways, a pendulum has no
    /// third harmonic, and the hearts of exercise, fever and pacing keep their rate to a few thousandths. What turns evenly leaves up to 0.004, such hearts 0.018 and more.
    /// </summary>
    public double LeastUnsteadyShareOfThrown { get; init; } = 0.012;

    /// <summary>Degrees of freedom of white noise in a second of a smoothed wave: twice the 6.3 Hz that the smoothing lets through of it. By the standard error of R it tells how much of what a steady wave leaves is noise, whatever the wave's own overtones.</summary>
    public double FreedomPerSecond { get; init; } = 12.5;

    /// <summary>Third harmonic over the first, as amplitudes, that such a wave has at least: two harmonics alone make a front, and show up to 0.013. Half of it at rates of which the smoothing takes a third harmonic away.</summary>
    public double ThrownThirdWaveShare { get; init; } = 0.02;

    /// <summary>Beats from which jitter leaves that much. What it walks by at random grows with the square root of their number, and what a phase that bends takes of it shrinks: of fewer beats in proportion less is asked.</summary>
    public double BeatsOfUnsteadyShare { get; init; } = 16;

    /// <summary>White noise over the wave, root mean squares, below which that is told: with more, the noise is not known well enough to take it away from a tenth.</summary>
    public double LargestNoiseBesideSteadiness { get; init; } = 0.15;

    /// <summary>Most seconds in which a wave was seen to swing that are remembered: as many that show life outweigh them.</summary>
    public int LongestSwingSeconds { get; init; } = 8;

    /// <summary>Skewness of blood volume below which a wave without a front is up for as long as down, as a swing is, which pushes bend by a tenth: pulses blunted by their second waves keep 0.15 and more.</summary>
    public double EvenCrest { get; init; } = 0.12;

    /// <summary>Period, s, from which a wave is slow beside breathing: 60 beats a minute.</summary>
    public double SlowSwingPeriodSeconds { get; init; } = 1;

    /// <summary>Period, s, above which nothing is seen to breathe beside a wave: 43 beats a minute lie nearer to twenty-four breaths than eight seconds resolve through a Hann window.</summary>
    public double LongestPeriodBesideBreathSeconds { get; init; } = 1.4;

    /// <summary>Shortest window, s, in which a wave is seen to be unsteady: of fewer beats, drift makes another shape.</summary>
    public int ProvingWindowSeconds { get; init; } = 6;

    /// <summary>Such windows in which a wave has to have a third harmonic and be unsteady to be alive: one push of something that swings bends up to three.</summary>
    public int ProvingLifeSeconds { get; init; } = 4;

    /// <summary>Whole windows in which a wave has to be seen to breathe, beyond those in which it is not, to be alive: drift looks like a breath in one.</summary>
    public int ProvingBreathSeconds { get; init; } = 3;
}
