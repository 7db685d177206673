using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>How far R may be off by chance: white noise, what breathing leaves, what the lights disagree by, and what R moves by to the end of the window.</summary>
internal static class RatioChance
{
    /// <summary>Half-width that holds R 95 times in 100, in units of R.</summary>
    /// <param name="second">What was read.</param>
    /// <param name="options">The multiples of each.</param>
    public static double Of(in SignalSecond second, JudgeOptions options)
    {
        var fit = second.Fit;
        return Math.Sqrt(
            Square(ErrorsOf(second, options) * fit.StandardError)
            + Square(options.IntervalDisagreements * fit.Disagreement)
            + Square(fit.Ratio * options.SlowRest / fit.PulseSize)
            + Square(fit.Lag));
    }

    // What is left over of breathing is not white, and the slower the pulse the more of it lies where the pulse is; of a still slower one it was measured.
    private static double ErrorsOf(in SignalSecond second, JudgeOptions options) =>
        second.Fit.IsSeparated ? options.IntervalErrorsBesideMotion
        : options.IntervalErrors * Math.Max(1, IsMeasured(second, options) ? options.LongestIntervalPeriodSeconds : second.Pulse.PeriodSeconds);

    // What repeats as slowly may be every second beat of a faster heart.
    private static bool IsMeasured(in SignalSecond second, JudgeOptions options) =>
        60 / second.Pulse.RatePerMinute > options.LongestIntervalPeriodSeconds;

    private static double Square(double x) => x * x;
}
