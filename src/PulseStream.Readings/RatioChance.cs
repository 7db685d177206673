using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>How far R may be off by chance: white noise, what the lights disagree by, and what it moves by to the end of the window.</summary>
internal static class RatioChance
{
    /// <summary>Half-width that holds R 95 times in 100, in units of R.</summary>
    /// <param name="fit">What was read.</param>
    /// <param name="options">The multiples of each.</param>
    public static double Of(in RatioFit fit, JudgeOptions options) =>
        Math.Sqrt(Square(options.IntervalErrors * fit.StandardError) + Square(options.IntervalDisagreements * fit.Disagreement) + Square(fit.Lag));

    private static double Square(double x) => x * x;
}
