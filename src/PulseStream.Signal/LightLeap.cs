namespace PulseStream.Signal;

/// <summary>
/// Finds light that leaps from one level to another and stays there: a lamp is on within a tenth of a second, and either light before
/// and after is as still as the finger leaves it. What moves takes its time, or does not stay: a swing that is about to turn on either
/// side takes half a second in between.
/// </summary>
internal static class LightLeap
{
    /// <summary>Seconds of light before the end of a second that the leaps of that second are looked for in: a second, and what a leap needs on either side.</summary>
    public const double LookBackSeconds = 1 + (2 * (HalfSeconds + LevelSeconds));

    // A lamp's tenth of a second, and a tenth that smoothing blurs it by.
    private const double HalfSeconds = 0.12;
    private const double LevelSeconds = 0.3;

    // Of a swing that is as still before and after as the finger's pulse leaves a lamp's levels, no more than half comes so quickly.
    private const double LevelShare = 0.28;
    private const double QuickShare = 0.55;

    /// <summary>The largest leap of infrared, natural logarithm of light, where red leaps the same way; 0 where there is none.</summary>
    /// <param name="logLights">Logarithms of infrared and red in turn, slow part and all.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="least">Leap of either light below which it is none.</param>
    public static double LargestIn(ReadOnlySpan<double> logLights, double binRateHz, double least)
    {
        var half = Math.Max(1, (int)Math.Round(HalfSeconds * binRateHz));
        var level = Math.Max(2, (int)Math.Round(LevelSeconds * binRateHz));
        var largest = 0.0;
        for (var middle = half + level; middle + half + level < logLights.Length / 2; middle++)
        {
            var infrared = Leap(logLights, 2 * middle, 2 * half, 2 * level, least, 2 * level);
            if (Math.Abs(infrared) > Math.Abs(largest) && infrared * Leap(logLights, (2 * middle) + 1, 2 * half, 2 * level, least, 2 * level) > 0)
            {
                largest = infrared;
            }
        }

        return largest;
    }

    /// <summary>The largest leap of red − R × infrared, natural logarithm of light; 0 where there is none. There is no pulse in it that could hide what went before: all of that has to be as still, which what slips and shakes is not.</summary>
    /// <param name="logLights">Logarithms of infrared and red in turn, slow part and all; red is left without the pulse.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="ratio">R of the pulse.</param>
    /// <param name="least">Leap below which it is none.</param>
    public static double LargestBesidePulse(Span<double> logLights, double binRateHz, double ratio, double least)
    {
        for (var n = 0; n + 1 < logLights.Length; n += 2)
        {
            logLights[n + 1] -= ratio * logLights[n];
        }

        var half = Math.Max(1, (int)Math.Round(HalfSeconds * binRateHz));
        var level = Math.Max(2, (int)Math.Round(LevelSeconds * binRateHz));
        var largest = 0.0;
        for (var middle = half + level; middle + half + level < logLights.Length / 2; middle++)
        {
            var leap = Leap(logLights, (2 * middle) + 1, 2 * half, 2 * level, least, 2 * (middle - half));
            largest = Math.Abs(leap) > Math.Abs(largest) ? leap : largest;
        }

        return largest;
    }

    // Places in one of the two lights that take turns. What is quick, and the ends of the levels, tell most places apart at once.
    private static double Leap(ReadOnlySpan<double> values, int middle, int half, int level, double least, int levelBefore)
    {
        var quarter = half / 4 * 2;
        var quick = values[middle + quarter] - values[middle - quarter];
        if (!(Math.Abs(quick) > QuickShare * least) || !(Math.Abs(values[middle + half] - values[middle - half]) > (1 - LevelShare) * least))
        {
            return 0;
        }

        var (before, rangeBefore) = LevelOf(values, middle - half - levelBefore, levelBefore);
        var (after, rangeAfter) = LevelOf(values, middle + half, level);
        var leap = after - before;
        return Math.Abs(leap) > least && Math.Abs(quick) > QuickShare * Math.Abs(leap) && Math.Max(rangeBefore, rangeAfter) < LevelShare * Math.Abs(leap) ? leap : 0;
    }

    private static (double Mean, double Range) LevelOf(ReadOnlySpan<double> values, int first, int level)
    {
        double sum = 0, lowest = double.PositiveInfinity, highest = double.NegativeInfinity;
        for (var n = first; n <= first + level; n += 2)
        {
            sum += values[n];
            lowest = Math.Min(lowest, values[n]);
            highest = Math.Max(highest, values[n]);
        }

        return (sum / ((level / 2) + 1), highest - lowest);
    }
}
