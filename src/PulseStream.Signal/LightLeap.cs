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

    /// <summary>The same for leaps beside the pulse, which stillness goes before: shorter than any window.</summary>
    public const double LookBackBesidePulseSeconds = 1 + StillSeconds + LevelSeconds + (2 * HalfSeconds);

    // A lamp's tenth of a second, and a tenth that smoothing blurs it by.
    private const double HalfSeconds = 0.12;
    private const double LevelSeconds = 0.3;

    // A hand that moves once in a second, or faster, is not still for a whole one; in less it comes to rest where it turns.
    private const double StillSeconds = 1;

    // Of a swing that is as still before and after as the finger's pulse leaves a lamp's levels, no more than half comes so quickly.
    private const double LevelShare = 0.28;
    private const double QuickShare = 0.55;

    // What varies by less than this share of the leap differs by less than this one of the distance of the two levels' near ends, as
    // either end lies within its level: LevelShare / (1 - 2 LevelShare), rounded up.
    private const double LooseLevelShare = 0.64;

    /// <summary>The largest leap of infrared, natural logarithm of light, where red leaps the same way; 0 where there is none.</summary>
    /// <param name="logLights">Logarithms of infrared and red in turn, slow part and all.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="least">Leap below which it is none, in infrared and in red.</param>
    public static double LargestIn(ReadOnlySpan<double> logLights, double binRateHz, (double Infrared, double Red) least)
    {
        var leastOfEither = Vector128.Create(least.Infrared, least.Red);
        var half = Math.Max(1, (int)Math.Round(HalfSeconds * binRateHz));
        var level = Math.Max(2, (int)Math.Round(LevelSeconds * binRateHz));
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(logLights);
        var largest = 0.0;
        for (var middle = half + level; middle + half + level < lanes.Length; middle++)
        {
            if (!IsQuick(lanes, middle, half, leastOfEither) || !MayBeLevel(lanes, middle, half, level))
            {
                continue;
            }

            var leaps = Leaps(lanes, middle, half, level, level, leastOfEither);
            if (Math.Abs(leaps[0]) > Math.Abs(largest) && leaps[0] * leaps[1] > 0)
            {
                largest = leaps[0];
            }
        }

        return largest;
    }

    /// <summary>The largest leap of red − R × infrared, natural logarithm of light; 0 where there is none. There is no pulse in it that could hide what went before: a whole second of that has to be as still, which what slips and shakes is not.</summary>
    /// <param name="logLights">Logarithms of infrared and red in turn, slow part and all; either is left as red without the pulse.</param>
    /// <param name="binRateHz">Bins a second.</param>
    /// <param name="ratio">R of the pulse.</param>
    /// <param name="least">Leap below which it is none.</param>
    public static double LargestBesidePulse(Span<double> logLights, double binRateHz, double ratio, double least)
    {
        var half = Math.Max(1, (int)Math.Round(HalfSeconds * binRateHz));
        var level = Math.Max(2, (int)Math.Round(LevelSeconds * binRateHz));
        var still = Math.Max(level, (int)Math.Round(StillSeconds * binRateHz));
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(logLights);
        if (TakePulseAway(lanes, ratio) < (1 - LevelShare) * least)
        {
            return 0;
        }

        var largest = 0.0;
        var leastOfEither = Vector128.Create(least);
        for (var middle = half + still; middle + half + level < lanes.Length; middle++)
        {
            if (IsQuick(lanes, middle, half, leastOfEither) && MayBeLevel(lanes, middle, half, level))
            {
                var leap = Leaps(lanes, middle, half, still, level, leastOfEither)[0];
                largest = Math.Abs(leap) > Math.Abs(largest) ? leap : largest;
            }
        }

        return largest;
    }

    // Leaves red − R × infrared in both lights, and tells between which bounds it stays: a finger at rest does not move it by a leap at all.
    private static double TakePulseAway(Span<Vector128<double>> lanes, double ratio)
    {
        var shares = Vector128.Create(-ratio, 1);
        Vector128<double> lowest = Vector128.Create(double.PositiveInfinity), highest = Vector128.Create(double.NegativeInfinity);
        foreach (ref var lights in lanes)
        {
            lights = Vector128.Create(Vector128.Sum(lights * shares));
            lowest = Vector128.MinNative(lowest, lights);
            highest = Vector128.MaxNative(highest, lights);
        }

        return (highest - lowest)[0];
    }

    // What is quick tells most places apart at once, in both lights together.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool IsQuick(ReadOnlySpan<Vector128<double>> lanes, int middle, int half, Vector128<double> least)
    {
        var quick = Vector128.Abs(lanes[middle + (half / 2)] - lanes[middle - (half / 2)]);
        var far = Vector128.Abs(lanes[middle + half] - lanes[middle - half]);
        return Vector128.GreaterThanAll(quick, QuickShare * least) && Vector128.GreaterThanAll(far, (1 - LevelShare) * least);
    }

    // The middles and ends of the levels tell most of the others.
    private static bool MayBeLevel(ReadOnlySpan<Vector128<double>> lanes, int middle, int half, int level)
    {
        var before = lanes[middle - half];
        var after = lanes[middle + half];
        var range = Vector128.Max(
            Vector128.Max(Vector128.Abs(before - lanes[middle - half - level]), Vector128.Abs(after - lanes[middle + half + level])),
            Vector128.Max(Vector128.Abs(before - lanes[middle - half - (level / 2)]), Vector128.Abs(after - lanes[middle + half + (level / 2)])));
        return Vector128.LessThanAll(range, Vector128.Abs(after - before) * LooseLevelShare);
    }

    // What either light leaps by about a place; 0 where it does not.
    private static Vector128<double> Leaps(ReadOnlySpan<Vector128<double>> lanes, int middle, int half, int levelBefore, int level, Vector128<double> least)
    {
        var quick = Vector128.Abs(lanes[middle + (half / 2)] - lanes[middle - (half / 2)]);
        var (before, rangeBefore) = LevelOf(lanes.Slice(middle - half - levelBefore, levelBefore + 1));
        var (after, rangeAfter) = LevelOf(lanes.Slice(middle + half, level + 1));
        var leap = after - before;
        var size = Vector128.Abs(leap);
        return leap
            & Vector128.GreaterThan(size, least)
            & Vector128.GreaterThan(quick, size * QuickShare)
            & Vector128.LessThan(Vector128.Max(rangeBefore, rangeAfter), size * LevelShare);
    }

    private static (Vector128<double> Mean, Vector128<double> Range) LevelOf(ReadOnlySpan<Vector128<double>> level)
    {
        Vector128<double> sum = default, lowest = level[0], highest = level[0];
        foreach (var light in level)
        {
            sum += light;
            lowest = Vector128.MinNative(lowest, light);
            highest = Vector128.MaxNative(highest, light);
        }

        return (sum / level.Length, highest - lowest);
    }
}
