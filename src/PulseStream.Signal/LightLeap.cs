using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

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
    private const uint BothLights = 0b11;

    // What varies by less than this share of the leap differs by less than this one of the distance of the two levels' near ends, as
    // either end lies within its level: LevelShare / (1 - 2 LevelShare), rounded up.
    private const double LooseLevelShare = 0.64;

    /// <summary>The largest leap of infrared, natural logarithm of light, where red leaps the same way; 0 where there is none.</summary>
    /// <param name="logLights">Logarithms of infrared and red in turn, slow part and all.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="least">Leap of either light below which it is none.</param>
    public static double LargestIn(ReadOnlySpan<double> logLights, double binRateHz, double least)
    {
        var half = Math.Max(1, (int)Math.Round(HalfSeconds * binRateHz));
        var level = Math.Max(2, (int)Math.Round(LevelSeconds * binRateHz));
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(logLights);
        var largest = 0.0;
        for (var middle = half + level; middle + half + level < lanes.Length; middle++)
        {
            if (!MayLeap(lanes, middle, half, level, least))
            {
                continue;
            }

            var infrared = Leap(logLights, 2 * middle, 2 * half, 2 * level, least);
            if (Math.Abs(infrared) > Math.Abs(largest) && infrared * Leap(logLights, (2 * middle) + 1, 2 * half, 2 * level, least) > 0)
            {
                largest = infrared;
            }
        }

        return largest;
    }

    // What is quick, and the levels' middles and ends, tell most places apart at once, in both lights together.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool MayLeap(ReadOnlySpan<Vector128<double>> lanes, int middle, int half, int level, double least)
    {
        var quick = Vector128.Abs(lanes[middle + (half / 2)] - lanes[middle - (half / 2)]);
        var before = lanes[middle - half];
        var after = lanes[middle + half];
        var far = Vector128.Abs(after - before);
        var range = Vector128.Max(
            Vector128.Max(Vector128.Abs(before - lanes[middle - half - level]), Vector128.Abs(after - lanes[middle + half + level])),
            Vector128.Max(Vector128.Abs(before - lanes[middle - half - (level / 2)]), Vector128.Abs(after - lanes[middle + half + (level / 2)])));
        var isLeap = Vector128.GreaterThan(quick, Vector128.Create(QuickShare * least))
            & Vector128.GreaterThan(far, Vector128.Create((1 - LevelShare) * least))
            & Vector128.LessThan(range, far * LooseLevelShare);
        return isLeap.ExtractMostSignificantBits() == BothLights;
    }

    // Places in one of the two lights that take turns.
    private static double Leap(ReadOnlySpan<double> values, int middle, int half, int level, double least)
    {
        var quarter = half / 4 * 2;
        var quick = values[middle + quarter] - values[middle - quarter];
        var (before, rangeBefore) = LevelOf(values, middle - half - level, level);
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
