namespace PulseStream.Signal;

/// <summary>Tells the two waves of one beat, both counted, from two beats that alternate: a second wave comes when the aortic valve has closed, an early beat once the heart has filled again.</summary>
internal static class TwoWaves
{
    // Two beats in a period, to a tenth.
    private const double PairShare = 0.1;

    // An early beat comes a fifth of an interval early at least, which makes an irregularity of 0.4.
    private const double LeastOfEarlyBeats = 0.38;

    // Later than this after the valve's closure is due, as a share, comes no second wave.
    private const double LateWaveShare = 1.25;

    /// <summary>Whether both waves of each beat may have been counted.</summary>
    /// <param name="rhythm">The beats that were counted.</param>
    /// <param name="periodSeconds">The period with which the light repeats, s.</param>
    public static bool AreCounted(in Rhythm rhythm, double periodSeconds) =>
        Math.Abs(Math.Log(rhythm.RatePerMinute * periodSeconds / 120)) < PairShare
        && (rhythm.ShortIntervalSeconds < ValveClosure.SoonestBeatSeconds(periodSeconds)
            || (rhythm.Irregularity < LeastOfEarlyBeats
                && rhythm.ShortIntervalSeconds < LateWaveShare * ValveClosure.LatestWaveSeconds(periodSeconds)));
}
