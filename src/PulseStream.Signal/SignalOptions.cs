namespace PulseStream.Signal;

/// <summary>Settings of the signal stage, each with its reason.</summary>
public sealed record SignalOptions
{
    /// <summary>Edge of the smoothing, Hz: a pulse carries next to nothing above its harmonics up to here.</summary>
    public double FastestPulseHarmonicHz { get; init; } = 8;

    /// <summary>Everything slower than this in a window is breathing and baseline, not pulse, Hz.</summary>
    public double SlowestPulseHz { get; init; } = 0.5;

    /// <summary>The same where the pulse is known to be faster than <see cref="FastPulsePerMinute"/>, Hz: the second harmonic of breathing lies below.</summary>
    public double SlowestFastPulseHz { get; init; } = 0.8;

    /// <summary>Pulse rate from which the higher edge leaves the pulse whole, 1/min.</summary>
    public double FastPulsePerMinute { get; init; } = 57;

    /// <summary>The same where it is known to be faster than <see cref="RapidPulsePerMinute"/>, Hz: so does the second harmonic of thirty breaths a minute.</summary>
    public double SlowestRapidPulseHz { get; init; } = 1.2;

    /// <summary>Pulse rate from which that edge leaves the pulse whole, 1/min, even where its second waves were counted as beats.</summary>
    public double RapidPulsePerMinute { get; init; } = 145;

    /// <summary>The same for the beats of a slow pulse, Hz: their first wave has to be whole.</summary>
    public double SlowestSlowPulseHz { get; init; } = 0.35;

    /// <summary>Pulse rate below which they are seen so, 1/min.</summary>
    public double SlowPulsePerMinute { get; init; } = 50;

    /// <summary>Everything slower than this is baseline and no breathing, Hz: six breaths a minute.</summary>
    public double SlowestBreathingHz { get; init; } = 0.1;

    /// <summary>Skewness of the slope from which a known pulse is not asked for its third harmonic: twice what a pulse is believed for.</summary>
    public double SureFrontSteepness { get; init; } = 0.32;

    /// <summary>Shortest window, s, in which a wave is measured for how steady it is: of fewer beats, drift makes another shape.</summary>
    public int SteadinessWindowSeconds { get; init; } = 6;

    /// <summary>Turns of a wave in a shorter window, before there is any longer, in which it is: their jitter is as large as that of a pulse at rest in the longer one.</summary>
    public double SteadinessTurns { get; init; } = 8;

    /// <summary>Third harmonic over the first below which it is not: two harmonics are a swing however unsteady they are, but of a rapid pulse the smoothing leaves no more.</summary>
    public double SteadinessThirdWaveShare { get; init; } = 0.003;

    /// <summary>Longest window, s: a step of saturation has to show 90 % of itself within it.</summary>
    public int LongestWindowSeconds { get; init; } = 8;

    /// <summary>Shortest window, s: three beats at rest.</summary>
    public int ShortestWindowSeconds { get; init; } = 4;

    /// <summary>The pulse rate is the mean of the beats of so many seconds, whatever window R was read from: long enough for three beats of the slowest pulse, and a step of the rate is gone from it after eight seconds.</summary>
    public int AveragingSeconds { get; init; } = 8;

    /// <summary>What red and infrared may disagree by, in units of R, where beats are still counted into the rate of later seconds; what disagrees by more is refused as movement.</summary>
    public double SoundDisagreement { get; init; } = 0.03;

    /// <summary>Gaps up to this long are bridged, s; longer ones restart the window. A straight line between two points of a pulse has its R, and three quarters of the longest window are left. Two seconds, and the bins at a gap's ends, of which samples are missing as well; with gaps of three the rate of a slow pulse was told wrongly.</summary>
    public double BridgedGapSeconds { get; init; } = 2.1;

    /// <summary>
    /// What red and infrared disagree by, beyond white noise, in units of R, up to which a window is taken at once. Above
    /// it other edges, lines of mains light and shorter windows are tried, and the one that agrees best is taken.
    /// </summary>
    public double CoherentDisagreement { get; init; } = 0.006;

    /// <summary>Least part of a window, s, before a change of the blood and behind it, from which R is read: two beats at rest.</summary>
    public double LeastChangedSeconds { get; init; } = 1.9;

    /// <summary>Growth of infrared's pulse from before a change of the blood to behind it, or from the calm one to that window, either way, as a logarithm, that is none: two seconds hold no whole number of beats.</summary>
    public double LargestGrowthAtChange { get; init; } = 0.2;

    /// <summary>What the lights may disagree by, in units of R, once a change of the blood is taken into account: as little as in any calm window.</summary>
    public double ChangedDisagreement { get; init; } = 0.006;

    /// <summary>Share of the disagreement that is left in the lights' curvatures, with their standard error, where something slow makes it: R is read from them then. Movement leaves all of it.</summary>
    public double CurvatureShare { get; init; } = 0.65;

    /// <summary>Size of a pulse, root mean square of the logarithm of infrared, below which breathing's overtones are taken away as slow though the lights agree: a perfusion of some 0.4 %, beside which breathing is the larger.</summary>
    public double WeakPulseSize { get; init; } = 0.0012;

    /// <summary>Share of the wave that has to be left then: less, and it was no overtone but the pulse.</summary>
    public double LeastPulseLeft { get; init; } = 0.75;

    /// <summary>Share of the disagreement that one steady line has to explain before it is removed as mains light.</summary>
    public double LineShare { get; init; } = 0.7;

    /// <summary>Share of the disagreement's power that a line explains where nothing but one line disturbs: what moves with the heart, and movement, have a second harmonic of a tenth and more.</summary>
    public double PureLineShare { get; init; } = 0.98;

    /// <summary>The same from which a line is looked at as light that is added in counts: what bends a lamp's line is a few hundredths of it, what moves has more that is no line.</summary>
    public double AddedLineShare { get; init; } = 0.95;

    /// <summary>Standard error of R, in its units, above which what passes for noise is asked whether it is a line: a lamp that is half smoothed away moves R by up to ten times of it, and half a point is not worth looking.</summary>
    public double LeastErrorOfNoise { get; init; } = 0.002;

    /// <summary>Standard error of R, in its units, above which lines have taken too much of the pulse for nothing better to be looked for: 0.3 points of SpO2.</summary>
    public double LargestErrorBesideLines { get; init; } = 0.012;

    /// <summary>Disagreement of the lights, in units of R, up to which a known pulse is read where no line was taken away: beside one it has to be a third of that.</summary>
    public double DisagreementWithoutLines { get; init; } = 0.03;

    /// <summary>What a pulse that is put back where a line was may have of the calm pulse's size, or of what is left without the line where none is known: with more, the line's own light came back.</summary>
    public double LargestPutBack { get; init; } = 1.5;

    /// <summary>The same of what is left without the line where that lay on the first wave: a pulse's other waves are a quarter of it and more.</summary>
    public double LargestFirstWavePutBack { get; init; } = 4;

    /// <summary>Leap of either light, as a logarithm, below which it is not looked at: a hundredth is what a pulse of 1 % moves it by.</summary>
    public double LeastLeap { get; init; } = 0.01;

    /// <summary>The same of red − R × infrared, in which a pulse leaves nothing: light of 2 % in a mixture that is a third from R moves it by as much.</summary>
    public double LeastLeapBesidePulse { get; init; } = 0.006;

    /// <summary>Disagreement of the lights, in units of R, above which a movement is looked for, once a calm pulse is known.</summary>
    public double SeparatedDisagreement { get; init; } = 0.02;

    /// <summary>Window from which the calm pulse is learned and in which movement is told from it, s: some six beats at least.</summary>
    public int SeparationWindowSeconds { get; init; } = 6;

    /// <summary>Share of the calm pulse's front, as skewness of the slope, that one put back where a line was has at least: a lamp's light that is taken for it is rounder.</summary>
    public double LeastFrontShare { get; init; } = 0.6;

    /// <summary>Spread of the pulse's height, as a share, against the one learned: some eight beats that vary by 5 %.</summary>
    public double HeightSpread { get; init; } = 0.02;

    /// <summary>What this spread grows by for the square root of each second since, as a share: vessels change their tone within a minute.</summary>
    public double HeightSpreadPerRootSecond { get; init; } = 0.01;

    /// <summary>Share that infrared's pulse in a movement may be higher or lower by than the calm one, beyond chance, and still be it: with more it may be a movement that keeps time with the heart.</summary>
    public double LargestOtherHeight { get; init; } = 0.2;

    /// <summary>Spread of a heart's intervals about their mean within a window, as a share: breathing moves them by some percent (common practice).</summary>
    public double IntervalSpread { get; init; } = 0.05;

    /// <summary>Spread of a heart's pace in a movement about the calm one, as a share.</summary>
    public double PaceSpread { get; init; } = 0.1;

    /// <summary>Logarithm of how much likelier each beat has to make a window before a pulse in a movement is one for sure: the best of the ten-odd places that each may have by its pace is likelier by as much by chance.</summary>
    public double LeastBeatLikelihood { get; init; } = 2;

    /// <summary>Spread of the intervals over their mean from which second waves are looked for by what they keep to; with less the window repeats, and its period tells more.</summary>
    public double LeastUnevenSpread { get; init; } = 0.07;

    /// <summary>Third harmonic over the first from which beats are compared once they are stretched to one length: stretched so, any wave of one harmonic is like another.</summary>
    public double LeastThirdWaveOfStretched { get; init; } = 0.15;

    /// <summary>Skewness of the slope from which they are compared so whatever the third harmonic: a wave of one has none, and beats of three lengths in turn hide their harmonics.</summary>
    public double FrontSteepnessOfStretched { get; init; } = 0.64;
}
