namespace PulseStream.Readings;

/// <summary>Limits of the form of a wave that is blood which is thrown, each with its reason.</summary>
public sealed record FormOptions
{
    /// <summary>Skewness of the slope below which the wave has no front: blood comes faster than it goes, a shaken hand moves alike both ways. The published two-Gaussian pulse (Tang, Sci Rep 2020;10:13883) has 0.2 to 0.35 here, most fingers more.</summary>
    public double LeastFrontSteepness { get; init; } = 0.16;

    /// <summary>Skewness of blood volume from which a wave as steep behind as in front is a pulse too: high for a shorter time than low.</summary>
    public double LeastCrest { get; init; } = 0.5;

    /// <summary>Skewness of the slope that such a wave has at least: none falls faster than it rises.</summary>
    public double LeastFrontBesideCrest { get; init; } = -0.15;

    /// <summary>The same of a slow wave that repeats well: its second wave may be the taller one.</summary>
    public double LeastFrontBesideSecondWave { get; init; } = -0.5;

    /// <summary>Third harmonic over the first, as amplitudes, from which a wave that repeats well is a pulse whatever its front: what swings has next to none, a pulse of up to 120 a minute a tenth and more.</summary>
    public double LeastThirdWaveShare { get; init; } = 0.1;

    /// <summary>The same where breathing is seen beside it: five times what a swing has.</summary>
    public double LeastThirdWaveShareBesideBreathing { get; init; } = 0.02;

    /// <summary>
    /// Period, s, below which a wave that is up for a shorter time than down and breathes clearly is asked for no third harmonic: of a round pulse's,
    /// a hundredth, the smoothing takes some from 6.7 Hz on. Slower ones may be two equal bumps of a beat that lasts twice as long.
    /// </summary>
    public double LongestPeriodWithoutThirdWaveSeconds { get; init; } = 0.45;

    /// <summary>Autocorrelation that such a wave has at least.</summary>
    public double LeastThirdWavePeriodicity { get; init; } = 0.9;

    /// <summary>Agreement of the beats, or autocorrelation, that such a wave has at least.</summary>
    public double LeastThirdWaveAgreement { get; init; } = 0.95;

    /// <summary>Skewness of the slope from which a wave with a period below <see cref="LongestPeriodWithoutThirdWaveSeconds"/> that is up for as long as down is asked for no third harmonic either, where its beats scatter: a swing has less, however it is bent.</summary>
    public double LeastFrontOfFast { get; init; } = 0.08;

    /// <summary>Third harmonic over the first, as amplitudes, from which beats that are alike are a heart's without a rhythm too: what shakes by chance has such overtones in any phase, and no two of its waves alike. Beside a clear breath, or once life was shown, it need not be more than of a wave with a rhythm.</summary>
    public double LeastThirdWaveShareOfAlike { get; init; } = 0.3;

    /// <summary>Agreement of such beats at least.</summary>
    public double LeastAgreementOfAlike { get; init; } = 0.88;

    /// <summary>Skewness of blood volume that a wave has at least which breathes: vessels that stay full between two waves have a little less than none.</summary>
    public double LeastCrestBesideBreathing { get; init; } = -0.3;

    /// <summary>Skewness of blood volume below which a wave is one short dip, whatever its front: vessels fill within a beat and run off, and are not full all the time but for a moment. Pulses keep −0.6 and more.</summary>
    public double LeastCrestOfAny { get; init; } = -0.8;

    /// <summary>Root mean square frequency, Hz, above which a hump without a front is too short for blood, which takes longer to run off: a Gaussian one 0.1 s wide at half its height.</summary>
    public double ShortWaveHz { get; init; } = 2.6;

    /// <summary>Skewness of blood volume from which such a wave is a hump in a quarter of its beat at most: no pulse that rises no faster than it falls is that.</summary>
    public double SurelyShortCrest { get; init; } = 1.2;

    /// <summary>Skewness of the slope below which it has no front.</summary>
    public double SurelyShortFront { get; init; } = 0.5;

    /// <summary>Its root mean square frequency as a multiple of the rate, above which it is too short: a bell in a quarter of its beat has 1.4 and more.</summary>
    public double SurelyShortHarmonic { get; init; } = 1.4;

    /// <summary>Root mean square frequency over the rate up to which a wave is round: a triangle whose crest comes late makes 1.06 of it, a second harmonic of three tenths 1.12; two bumps a beat, each counted, have 1.25 and more.</summary>
    public double MostHarmonicOfRound { get; init; } = 1.2;
}
