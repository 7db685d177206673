namespace PulseStream.Tests.OpenRecordings;

/// <summary>
/// The published rules for a stretch of pulse or ECG that can be believed: Orphanidou et al., IEEE J Biomed Health Inform 19, 832 (2015),
/// as a co-author's implementation has them. They see the beats and the bare signal, nothing else.
/// </summary>
internal static class QualityRules
{
    public const double WindowSeconds = 10;

    /// <summary>Least mean correlation with the template: of a plethysmogram and of an ECG.</summary>
    public const double LeastPlethScore = 0.86;
    public const double LeastEcgScore = 0.66;

    private const double LeastPerMinute = 40;
    private const double MostPerMinute = 180;
    private const double LongestGapSeconds = 3;
    private const double LargestIntervalRatio = 2.2;

    /// <summary>Whether rules and template accept a window.</summary>
    /// <param name="window">Its samples.</param>
    /// <param name="rateHz">Samples a second.</param>
    /// <param name="beats">Its beats in order, s from its start.</param>
    /// <param name="leastScore">Mean correlation that is just enough.</param>
    public static bool Accept(ReadOnlySpan<double> window, double rateHz, double[] beats, double leastScore) =>
        AreBeatsPlausible(beats) && Score(window, rateHz, beats) >= leastScore;

    /// <summary>Number of beats, longest gap (the window's edges count) and intervals of a window.</summary>
    public static bool AreBeatsPlausible(double[] beats)
    {
        if (beats.Length < LeastPerMinute * WindowSeconds / 60 || beats.Length > MostPerMinute * WindowSeconds / 60)
        {
            return false;
        }

        var intervals = Intervals(beats);
        var gaps = intervals.Append(beats[0]).Append(WindowSeconds - beats[^1]);
        return gaps.Max() <= LongestGapSeconds && intervals.Max() / intervals.Min() <= LargestIntervalRatio;
    }

    /// <summary>Mean absolute correlation of the beats with their mean, 0 to 1; NaN without a whole beat or with a missing sample.</summary>
    public static double Score(ReadOnlySpan<double> window, double rateHz, double[] beats)
    {
        var half = (int)Math.Floor(Intervals(beats).Average() * rateHz / 2);
        var waves = new List<double[]>();
        foreach (var beat in beats)
        {
            var at = (int)Math.Round(beat * rateHz);
            if (at - half >= 0 && at + half < window.Length)
            {
                waves.Add(OfNormOne(window.Slice(at - half, (2 * half) + 1)));
            }
        }

        if (waves.Count == 0)
        {
            return double.NaN;
        }

        var template = Enumerable.Range(0, (2 * half) + 1).Select(n => waves.Average(w => w[n])).ToArray();
        return waves.Average(w => Math.Abs(Correlation(w, template)));
    }

    private static double[] Intervals(double[] beats) => [.. beats.Zip(beats.Skip(1), (a, b) => b - a)];

    private static double[] OfNormOne(ReadOnlySpan<double> wave)
    {
        var values = wave.ToArray();
        var norm = Math.Sqrt(values.Sum(v => v * v));
        return [.. values.Select(v => v / norm)];
    }

    private static double Correlation(double[] x, double[] y)
    {
        var (meanX, meanY) = (x.Average(), y.Average());
        var (xy, xx, yy) = (0.0, 0.0, 0.0);
        for (var n = 0; n < x.Length; n++)
        {
            var (dx, dy) = (x[n] - meanX, y[n] - meanY);
            xy += dx * dy;
            xx += dx * dx;
            yy += dy * dy;
        }

        return xy / Math.Sqrt(xx * yy);
    }
}
