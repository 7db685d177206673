namespace PulseStream.Readings;

/// <summary>Limits between a second that is believed and one that is refused, each with its reason.</summary>
public sealed record JudgeOptions
{
    /// <summary>Missing share of one second above which it is refused: one sample in fifty still tells that the light is the finger's, and the window's other seconds what its blood is.</summary>
    public double MissingShare { get; init; } = 0.98;

    /// <summary>Missing share of the last eight seconds above which a second is refused: a third of a beat's points gone still leave its shape.</summary>
    public double MissingWindowShare { get; init; } = 0.35;

    /// <summary>Share of samples at an end stop above which a second is refused: even a few bend the peaks that R is read from.</summary>
    public double AtEndStopShare { get; init; } = 0.02;

    /// <summary>Standard error of SpO2, points, above which the pulse is too weak for its noise: twice it stays within the 1.5 points that an instrument is expected to repeat to.</summary>
    public double LargestErrorPercent { get; init; } = 0.75;

    /// <summary>The same where the pulse was told from movement, points: most of it is then how well the pulse's height is known, which is stated widely.</summary>
    public double LargestSeparatedErrorPercent { get; init; } = 0.9;

    /// <summary>The same where lines were taken away with part of the pulse: what is left then has to speak clearly, because what still disturbs it hides in its noise.</summary>
    public double LargestErrorBesideLinesPercent { get; init; } = 0.3;

    /// <summary>Perfusion below which a usable second warns, percent (common practice between 0.3 and 1).</summary>
    public double LowPerfusionPercent { get; init; } = 0.5;

    /// <summary>Noise over that of the calm finger from which it is no converter's: light that dims by half has 1.4 times as much, and a window of eight seconds tells it to a tenth.</summary>
    public double NewNoiseTimes { get; init; } = 2;

    /// <summary>Pulse over noise, root mean squares, below which nothing pulsates.</summary>
    public double SmallestPulseOverNoise { get; init; } = 1.5;

    /// <summary>
    /// Disagreement of the lights, in units of R, that a second may have before the pulse's height is known from calm
    /// seconds, and where a line was taken away: mains light leaves nothing, veins leave what is not one line. Movement many times the pulse hides in a small disagreement: 0.01 is 0.25 points for each time that the
    /// movement is as large as the pulse.
    /// </summary>
    public double UnprovenDisagreement { get; init; } = 0.01;

    /// <summary>Size of a wave, root mean square of the logarithm of infrared, up to which that holds: a perfusion of some 4 %. In a taller one a pulse of 1 % would else be drowned by movement that puts it off by more than a point; and a line taken away from it would be that pulse.</summary>
    public double UnprovenPulseSize { get; init; } = 0.013;

    /// <summary>The same once the pulse's height is known, so that movement cannot hide as a taller pulse: 0.03 is 0.75 points where there is as much movement as pulse.</summary>
    public double LargestDisagreement { get; init; } = 0.03;

    /// <summary>Seconds that a disturbance can stay in the longest window; what it spoils there is called settling.</summary>
    public int SettlingSeconds { get; init; } = 8;

    /// <summary>Beats that a window shorter than the longest has to hold, so that each can be compared with two others.</summary>
    public int LeastBeats { get; init; } = 3;

    /// <summary>Repetitions a minute above which a wave is no heart's: 220 are what a finger is asked for, and a window knows its period to a few of them.</summary>
    public double FastestPulsePerMinute { get; init; } = 230;

    /// <summary>Limits between a lamp, and a pulse beside one, and what moves.</summary>
    public LampOptions Lamp { get; init; } = new();

    /// <summary>Limits between light that is jerked and light that moves with its pulse.</summary>
    public JerkOptions Jerk { get; init; } = new();

    /// <summary>Limits between a finger and none.</summary>
    public AbsenceOptions Absence { get; init; } = new();

    /// <summary>Limits between what lives and what swings in the clip.</summary>
    public LivenessOptions Liveness { get; init; } = new();

    /// <summary>Limits of a form that only blood has which is thrown.</summary>
    public FormOptions Form { get; init; } = new();

    /// <summary>Autocorrelation below which a window has no rhythm of its own to vouch for its beats: chance shaking reaches it once in fifty windows.</summary>
    public double LeastPeriodicity { get; init; } = 0.8;

    /// <summary>What a front or a crest of 1 counts for beside the beats' agreement: chance shaking has either as often as it has beats alike.</summary>
    public double ShapeWeight { get; init; } = 0.15;

    /// <summary>Front or crest above which no more is counted.</summary>
    public double MostShape { get; init; } = 2;

    /// <summary>Lower quartile of the beats' correlations with the mean of the others, with shape counted, below which they are not one heart's; early beats of a sound rhythm go down to this.</summary>
    public double LeastLikeness { get; init; } = 0.65;

    /// <summary>The same where the window has no rhythm: one heart's beats are alike however irregular, chance shaking's are not.</summary>
    public double LeastLikenessWithoutRhythm { get; init; } = 0.8;

    /// <summary>The same before any second was believed: what has never been a pulse has to show it clearly once.</summary>
    public double LeastUnprovenLikeness { get; init; } = 1;

    /// <summary>Seconds in a row over which likeness is averaged for a wave without rhythm that falls short of <see cref="LeastUnprovenLikeness"/>: the last window shares nothing with what was before the first.</summary>
    public int LastingLikenessSeconds { get; init; } = 8;

    /// <summary>Mean likeness over them from which they are one heart's beats. Shaking may reach it in a window; in windows that end within eight seconds it stays below 0.83, and half of irregular hearts are above 1.</summary>
    public double LeastLastingLikeness { get; init; } = 0.88;

    /// <summary>What a second counts for among them whose wave is no pulse's: as alike as beats are that nothing shapes.</summary>
    public double LikenessOfNone { get; init; } = 0.5;

    /// <summary>Lower quartile of the beats' correlations below which no rate is told of an irregular rhythm: weak early beats and second waves cannot be told apart.</summary>
    public double LeastIrregularAgreement { get; init; } = 0.8;

    /// <summary>Sound seconds in a row that a pulse without rhythm has to show before any of it is believed: chance makes three hardly ever.</summary>
    public int SoundSecondsWithoutRhythm { get; init; } = 3;

    /// <summary>Swing of the acceleration within a second, root mean square in m/s², above which one light alone is not believed: a walking wrist was measured with 1.2 to 4.3, one on a bicycle with 0.4 to 1.1.</summary>
    public double LargestAccelerationSwing { get; init; } = 1;

    /// <summary>Growth of the pulse, as a logarithm, that a vessel does not show from one window to the next: ln 1.5.</summary>
    public double LargestGrowth { get; init; } = 0.4;

    /// <summary>Change of the pulse's height, as a logarithm, that breathing and the few beats of two seconds bring about: within it the pulse is the same.</summary>
    public double SameHeight { get; init; } = 0.4;

    /// <summary>Change of the period, as a logarithm, within which the pulse is the same: breathing moves the mean of eight seconds by less.</summary>
    public double SamePeriod { get; init; } = 0.06;

    /// <summary>Autocorrelation from which a rate that its period contradicts is not told: a heart without rhythm reaches it by chance now and then.</summary>
    public double LeastPeriodicityOfRate { get; init; } = 0.6;

    /// <summary>Difference of rate and period, or of rate and half the period, as a logarithm, that contradicts it: one beat in ten.</summary>
    public double LargestRateMiss { get; init; } = 0.1;

    /// <summary>Distance of a line from half the rate, from the rate or from one and a half of it, in units of the rate, within which what is left may be the pulse's second wave alone: what a window of eight seconds tells of frequencies, or more.</summary>
    public double OvertoneDistance { get; init; } = 0.1;

    /// <summary>Fastest second wave of breathing, Hz: 36 breaths a minute.</summary>
    public double FastestBreathingWaveHz { get; init; } = 1.2;

    /// <summary>Seconds that a rate is the mean of: an older one shares no beat with it.</summary>
    public int RateAveragingSeconds { get; init; } = 8;

    /// <summary>How far a pulse leaps from one beat to the next at most, 1/min: each second of it moves the mean by an eighth of that.</summary>
    public double LargestLeapPerMinute { get; init; } = 100;

    /// <summary>What the counting of a window's ends moves its rate by at most, 1/min: half a beat in eight seconds.</summary>
    public double LargestRateMiscountPerMinute { get; init; } = 4;

    /// <summary>Window beside a line, s, below which no rate is told: before it, the line spoils the beats, and four seconds hold too few for a mean of eight.</summary>
    public int LeastRateSecondsBesideLines { get; init; } = 6;

    /// <summary>Difference of rate and period, as a logarithm, above which no rate is told beside a line that was taken away: one beat too many or too few in eight seconds is more at any rate.</summary>
    public double LargestRateMissBesideLines { get; init; } = 0.03;

    /// <summary>Share of the known pulse's front that a taller pulse has at least to be the same one grown.</summary>
    public double SameFrontShare { get; init; } = 0.6;

    /// <summary>Share of what the lights disagree by that one frequency explains where mains light disturbs: two seconds of one frequency with a beginning in them leave half.</summary>
    public double RoomLightLineShare { get; init; } = 0.5;

    /// <summary>The same before the finger's own pulse is known, to compare with: chance movement and veins do not reach it.</summary>
    public double LoneRoomLightLineShare { get; init; } = 0.6;

    /// <summary>Disagreement that may then be left without the line, in units of R: twice what a believed second may have.</summary>
    public double LoneRoomLightDisagreement { get; init; } = 0.06;

    /// <summary>Autocorrelation that is left without the room light where it was room light alone that disturbed.</summary>
    public double LeastPeriodicityBesideRoomLight { get; init; } = 0.6;

    /// <summary>Distance of a disturbance's mixture from room light's, over the distance of that from R, within which it is room light: the pulse of two seconds goes with a disturbance by chance.</summary>
    public double SameMixShare { get; init; } = 0.25;

    /// <summary>Distance of a line from a harmonic of the known pulse, in units of its rate, within which it may move with the heart: two seconds tell frequencies no better at a slow pulse.</summary>
    public double HarmonicDistance { get; init; } = 0.25;

    /// <summary>Seconds after which another height of the pulse is taken as the true one.</summary>
    public int NewHeightSeconds { get; init; } = 20;

    /// <summary>Growth, as a logarithm, above which another height is never taken for the pulse's: ln 3 is more than a hand that is lowered does.</summary>
    public double LargestNewHeight { get; init; } = 1.1;

    /// <summary>Distance of R from the known pulse's, in units of R, within which one of any height is the same that has come back, at its rate and with its front: a point.</summary>
    public double SameRatio { get; init; } = 0.04;

    /// <summary>Seconds without a finger after which the next one is another: light that jumps for one second may be the same finger, half off.</summary>
    public int ForgottenSeconds { get; init; } = 2;

    /// <summary>Rise of the steady light, as a logarithm, that tells of light leaking past: blood alone changes it by a few percent.</summary>
    public double LeakRise { get; init; } = 0.05;

    /// <summary>The same in sizes of the pulse, root mean square: a slow one that is a tenth of the light moves the light's mean by more than that.</summary>
    public double LeakRisePulses { get; init; } = 3;

    /// <summary>Rise of the steady light, as a logarithm, from which a shrinking pulse is no longer taken as the finger's own: breathing moves the light by less.</summary>
    public double LeakDoubtRise { get; init; } = 0.02;

    /// <summary>Share of the light's rise by which the pulse has to have shrunk for it to be a leak: added light shrinks it by all of it.</summary>
    public double LeakShrinkShare { get; init; } = 0.5;

    /// <summary>Change of the steady light, as a logarithm, above which a pulse told from movement is not taken to have its calm height.</summary>
    public double LargestLightChange { get; init; } = 0.05;

    /// <summary>Step of R from one second to the next that a pulse told from movement may have: two points.</summary>
    public double SeparatedJump { get; init; } = 0.08;

    /// <summary>What this grows by for each second since the last that was believed: blood loses half a point a second for long.</summary>
    public double SeparatedJumpPerSecond { get; init; } = 0.02;

    /// <summary>What it grows to at most: four points. Beside it a pulse told from movement keeps within <see cref="LargestSeparatedDrift"/> of the last calm second.</summary>
    public double LargestSeparatedJump { get; init; } = 0.16;

    /// <summary>Seconds for which this holds beside a line where no second without one has shown the pulse's height yet, and in lights that nearly agree: what R is then may be what it has become.</summary>
    public int JumpSecondsWithoutHeight { get; init; } = 30;

    /// <summary>Distance of R from the last calm second's that a pulse told from movement may have: two points, as many as hardly any believed second may be wrong by. Whose blood changes by more has to hold still.</summary>
    public double LargestSeparatedDrift { get; init; } = 0.08;

    /// <summary>Seconds for which no pulse told from movement is believed once one has gone further: what stays within by chance is what is left of those that do not, and blood may have changed.</summary>
    public int CreptSeconds { get; init; } = 5;

    /// <summary>Distance of R from the last calm second's in its standard errors from which a pulse that is itself too uncertain to be told has gone further than <see cref="LargestSeparatedDrift"/> as well: chance hardly ever goes beyond three.</summary>
    public double CreptErrors { get; init; } = 3;

    /// <summary>What R wanders by in a second, root mean square, as far as a pulse told from movement is weighed against the last calm one: 0.8 points, nearly as fast as saturation ever falls.</summary>
    public double BloodWander { get; init; } = 0.032;

    /// <summary>Limits between a finger that slips and vessels or blood that change.</summary>
    public SlipOptions Slip { get; init; } = new();

    /// <summary>Distance of R from room light's mixture below which a wave that is no pulse may be room light, in units of R: as far as a pulse a third of its size moves it.</summary>
    public double RoomLightDistance { get; init; } = 0.05;

    /// <summary>The same, and the disagreement, below which nothing else is in the light at all: no finger pulses beside it.</summary>
    public double RoomLightAlone { get; init; } = 0.003;

    /// <summary>What R may have moved by for each that red's light has moved against infrared's, as logarithms, and still be moved by light leaking past: one, and what windows blur. Blood that loses oxygen moves R three times as much as what it darkens at rest, and more.</summary>
    public double LeakExplains { get; init; } = 1.5;

    /// <summary>Share of the light's move that R has to have moved by, the other way, for a second to be refused for it.</summary>
    public double LeakMatchShare { get; init; } = 0.7;

    /// <summary>What R may be off by for leaking light, in units of R, that an interval still tells: a point and a half.</summary>
    public double LargestLeakedRatio { get; init; } = 0.06;

    /// <summary>Move of R, and its chance, in units of R, below which light that has come is not asked whether it came past the finger: a fifth of a point.</summary>
    public double LargestKeptRatioMove { get; init; } = 0.008;

    /// <summary>What R may be off by for leaking light, as the lights' move against one another tells, in units of R, below which light that has come is not asked either: half a point, which the interval tells.</summary>
    public double LargestHarmlessLeak { get; init; } = 0.02;

    /// <summary>Share of what light and R have moved by, below chance, that is taken over as the finger's with each second: vessels and a softening pad take minutes.</summary>
    public double SeatGain { get; init; } = 0.05;

    /// <summary>Ambient light over the finger's, as a share, above which its own changes outweigh the pulse.</summary>
    public double AmbientShare { get; init; } = 1.0;

    /// <summary>Swing of the dark samples within a second, as a share of the finger's light, above which the light outside varies too fast to be taken off.</summary>
    public double AmbientSwingShare { get; init; } = 0.1;

    /// <summary>Successive differences of intervals over the mean interval above which the rhythm is called irregular; breathing alone stays below.</summary>
    public double Irregularity { get; init; } = 0.12;

    /// <summary>What a window counts for at most in the average of the last ones, by which a rhythm stays irregular whose beats differ by chance by less for a while: one early beat is over soon.</summary>
    public double MostIrregularity { get; init; } = 0.2;

    /// <summary>The same above which no rate is told: intervals that differ so much in turn are a slow pulse's two waves; every second beat early by 45 % makes 0.9.</summary>
    public double LargestIrregularity { get; init; } = 0.95;

    /// <summary>The same where nothing repeats, as early beats that come in turn do: a heart that flutters has a third to a half of it, second waves counted among its beats more.</summary>
    public double LargestIrregularityWithoutRhythm { get; init; } = 0.55;

    /// <summary>Autocorrelation below which nothing repeats, neither a beat nor two or three in turn.</summary>
    public double LeastPeriodicityOfTurns { get; init; } = 0.35;

    /// <summary>Seconds in which there may have been twice as many beats, or half of them, less those in which there may not, from which no rate is told: windows that share most of those beats are sure of them now and then by chance.</summary>
    public int LeastDoubts { get; init; } = 4;

    /// <summary>What they count for at most.</summary>
    public int MostDoubts { get; init; } = 5;

    /// <summary>What two fair countings of an irregular rhythm's beats may differ by from the rate told, either way, 1/min: with more, "within 3" would depend on how one counts, and no rate is told.</summary>
    public double LargestRateSpreadPerMinute { get; init; } = 2;

    /// <summary>Margin beyond the curve's range, in units of R, that still counts as its end: a healthy finger sits on the end of the textbook line.</summary>
    public double RangeMargin { get; init; } = 0.03;

    /// <summary>Multiple of the standard error in the interval of a pulse of 60 and more a minute; a slower one has as much more as it is slower. Student's t for the fifty to a hundred degrees of freedom of a window is 2.0, of which the rest below has its part.</summary>
    public double IntervalErrors { get; init; } = 1.75;

    /// <summary>Period, s, up to which it has more: of pulses below 50 a minute what breathing puts R off by is measured, and is in the standard error.</summary>
    public double LongestIntervalPeriodSeconds { get; init; } = 1.2;

    /// <summary>The same where the pulse was told from movement: its rest is not quite white, and in recorded beats and movement further from it than in invented ones, for which 2.2 was enough.</summary>
    public double IntervalErrorsBesideMotion { get; init; } = 2.8;

    /// <summary>Multiple of the disagreement in the interval: what disagrees is a few oscillations, of which chance puts most into the pulse at worst.</summary>
    public double IntervalDisagreements { get; init; } = 0.7;

    /// <summary>What slow light of another R leaves of itself in the pulse's band, natural logarithm of light, root mean square: a thousandth of a breath of 0.12 %.</summary>
    public double SlowRest { get; init; } = 1.2e-6;

    /// <summary>Amplitudes of removed room light that its mean may amount to: light is never negative, so at least one; mains lamps modulate by a third and more (common practice).</summary>
    public double RoomLightAmplitudes { get; init; } = 3;

    /// <summary>The same of light that is not as many counts in either channel, of which only what it adds to red beyond R times infrared is known: its mean is at least its amplitude, and moves R by as much as that where its mixture is far from both.</summary>
    public double OtherLightAmplitudes { get; init; } = 1.5;

    /// <summary>Half-width that every interval has at least, points: the rounding of converters and of beats that differ in shape, seen in streams without noise.</summary>
    public double IntervalFloorPercent { get; init; } = 0.003;
}
