namespace PulseStream.Readings;

/// <summary>Limits between a second that is believed and one that is refused, each with its reason.</summary>
public sealed record JudgeOptions
{
    /// <summary>Missing share of one second above which it is refused; half a second can be bridged.</summary>
    public double MissingShare { get; init; } = 0.6;

    /// <summary>Missing share of the last eight seconds above which a second is refused: a third of a beat's points gone still leave its shape.</summary>
    public double MissingWindowShare { get; init; } = 0.35;

    /// <summary>Share of samples at an end stop above which a second is refused: even a few bend the peaks that R is read from.</summary>
    public double AtEndStopShare { get; init; } = 0.02;

    /// <summary>Standard error of SpO2, points, above which the pulse is too weak for its noise: twice it stays within the 1.5 points that an instrument is expected to repeat to.</summary>
    public double LargestErrorPercent { get; init; } = 0.75;

    /// <summary>Perfusion below which a usable second warns, percent (common practice between 0.3 and 1).</summary>
    public double LowPerfusionPercent { get; init; } = 0.5;

    /// <summary>Pulse over noise, root mean squares, below which nothing pulsates.</summary>
    public double SmallestPulseOverNoise { get; init; } = 1.5;

    /// <summary>
    /// Disagreement of the lights, in units of R, that a second may have before the pulse's height is known from calm
    /// seconds. Movement many times the pulse hides in a small disagreement: 0.01 is 0.25 points for each time that the
    /// movement is as large as the pulse.
    /// </summary>
    public double UnprovenDisagreement { get; init; } = 0.01;

    /// <summary>The same once the pulse's height is known, so that movement cannot hide as a taller pulse: 0.03 is 0.75 points where there is as much movement as pulse.</summary>
    public double LargestDisagreement { get; init; } = 0.03;

    /// <summary>Seconds that a disturbance can stay in the longest window; what it spoils there is called settling.</summary>
    public int SettlingSeconds { get; init; } = 8;

    /// <summary>Beats that a window shorter than the longest has to hold, so that each can be compared with two others.</summary>
    public int LeastBeats { get; init; } = 3;

    /// <summary>Skewness of the slope below which the wave has no front: blood comes faster than it goes, a shaken hand moves alike both ways. The published two-Gaussian pulse (Tang, Sci Rep 2020;10:13883) has 0.2 to 0.35 here, most fingers more.</summary>
    public double LeastFrontSteepness { get; init; } = 0.16;

    /// <summary>Median correlation of the beats' fronts below which they are not one heart's.</summary>
    public double LeastAgreement { get; init; } = 0.85;

    /// <summary>Autocorrelation below which a window has no rhythm of its own to vouch for its beats.</summary>
    public double LeastPeriodicity { get; init; } = 0.6;

    /// <summary>The same correlation where the window has no rhythm: one heart's fronts are alike however irregular it beats, chance shaking's are not.</summary>
    public double LeastAgreementWithoutRhythm { get; init; } = 0.95;

    /// <summary>Swing of the acceleration within a second, root mean square in m/s², above which one light alone is not believed: a walking wrist was measured with 1.2 to 4.3, one on a bicycle with 0.4 to 1.1.</summary>
    public double LargestAccelerationSwing { get; init; } = 1;

    /// <summary>Growth of the pulse, as a logarithm, that a vessel does not show from one window to the next: ln 1.5.</summary>
    public double LargestGrowth { get; init; } = 0.4;

    /// <summary>Seconds after which another height of the pulse is taken as the true one.</summary>
    public int NewHeightSeconds { get; init; } = 20;

    /// <summary>Rise of the steady light, as a logarithm, that tells of light leaking past: blood alone changes it by a few percent.</summary>
    public double LeakRise { get; init; } = 0.05;

    /// <summary>Share of the light's rise by which the pulse has to have shrunk for it to be a leak: added light shrinks it by all of it.</summary>
    public double LeakShrinkShare { get; init; } = 0.5;

    /// <summary>Change of the light, as a logarithm, with which a finger has left: a finger takes most of the light away.</summary>
    public double OpenAirRise { get; init; } = 0.3;

    /// <summary>Ambient light over the finger's, as a share, above which its own changes outweigh the pulse.</summary>
    public double AmbientShare { get; init; } = 1.0;

    /// <summary>Swing of the dark samples within a second, as a share of the finger's light, above which the light outside varies too fast to be taken off.</summary>
    public double AmbientSwingShare { get; init; } = 0.1;

    /// <summary>Successive differences of intervals over the mean interval above which the rhythm is called irregular; breathing alone stays below.</summary>
    public double Irregularity { get; init; } = 0.12;

    /// <summary>What two fair countings of an irregular rhythm's beats may differ by from the rate told, either way, 1/min: with more, "within 3" would depend on how one counts, and no rate is told.</summary>
    public double LargestRateSpreadPerMinute { get; init; } = 2;

    /// <summary>Margin beyond the curve's range, in units of R, that still counts as its end: a healthy finger sits on the end of the textbook line.</summary>
    public double RangeMargin { get; init; } = 0.03;

    /// <summary>Multiple of the standard error that makes the interval; its scatter is known from some thirty degrees of freedom.</summary>
    public double IntervalErrors { get; init; } = 2.1;

    /// <summary>Half-width that every interval has at least, points: what breathing leaves behind.</summary>
    public double IntervalFloorPercent { get; init; } = 0.06;
}
