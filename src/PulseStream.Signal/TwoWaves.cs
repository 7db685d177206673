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

    // Blood comes within a tenth of the time from beat to beat, of two beats within less; a front that takes a ninth of what repeats is
    // that of one beat.
    private const double LongestFrontOfTwo = 0.11;

    /// <summary>Whether both waves of each beat may have been counted.</summary>
    /// <param name="rhythm">The beats that were counted.</param>
    /// <param name="periodSeconds">The period with which the light repeats, s.</param>
    public static bool AreCounted(in Rhythm rhythm, double periodSeconds) =>
        AreTwo(rhythm, periodSeconds)
        && (rhythm.ShortIntervalSeconds < ValveClosure.SoonestBeatSeconds(periodSeconds)
            || (rhythm.Irregularity < LeastOfEarlyBeats
                && rhythm.ShortIntervalSeconds < LateWaveShare * ValveClosure.LatestWaveSeconds(periodSeconds)));

    /// <summary>Whether two beats were counted in what repeats, whose fronts are too long for either to be one of two.</summary>
    /// <param name="rhythm">The beats that were counted.</param>
    /// <param name="periodSeconds">The period with which the light repeats, s.</param>
    /// <param name="slopes">Slope of the blood volume, a value a bin.</param>
    /// <param name="rises">Bins of the steepest rises that were counted; 64 at most.</param>
    /// <param name="binRateHz">Bins a second.</param>
    public static bool HaveLongFronts(in Rhythm rhythm, double periodSeconds, ReadOnlySpan<double> slopes, ReadOnlySpan<double> rises, double binRateHz)
    {
        if (rises.Length == 0 || !AreTwo(rhythm, periodSeconds))
        {
            return false;
        }

        Span<double> fronts = stackalloc double[rises.Length];
        for (var k = 0; k < rises.Length; k++)
        {
            fronts[k] = FrontWidth.BinsOf(slopes, Math.Round(rises[k]));
        }

        fronts.Sort();
        return fronts[fronts.Length / 2] >= LongestFrontOfTwo * periodSeconds * binRateHz;
    }

    /// <summary>Whether two beats were counted in what repeats. Beside movement nothing shows that they are two: it bends the shape that second waves are known by.</summary>
    /// <param name="rhythm">The beats that were counted.</param>
    /// <param name="periodSeconds">The period with which the light repeats, s.</param>
    public static bool AreTwo(in Rhythm rhythm, double periodSeconds) =>
        Math.Abs(Math.Log(rhythm.RatePerMinute * periodSeconds / 120)) < PairShare;
}
