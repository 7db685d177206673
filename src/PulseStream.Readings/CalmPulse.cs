using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>The pulse of the calm finger.</summary>
/// <param name="LogHeight">Logarithm of its size; NaN where no calm second has been seen since the finger came on.</param>
/// <param name="Ratio">Its ratio of ratios R.</param>
/// <param name="PeriodSeconds">Its period, s; 0 where none is known.</param>
internal readonly record struct CalmPulse(double LogHeight, double Ratio, double PeriodSeconds)
{
    /// <summary>The pulse of a finger of which no calm second has been seen.</summary>
    public static readonly CalmPulse Unknown = new(double.NaN, 0, 0);

    /// <summary>Whether a calm second has been seen since the finger came on.</summary>
    public bool IsKnown => !double.IsNaN(LogHeight);

    /// <summary>Whether a second repeats with the period of this pulse.</summary>
    /// <param name="second">The second.</param>
    /// <param name="options">The limits.</param>
    public bool HasSamePeriod(in SignalSecond second, JudgeOptions options) =>
        Math.Abs(Math.Log(second.Pulse.PeriodSeconds / PeriodSeconds)) < options.SamePeriod;

    /// <summary>Whether a second repeats with twice the period of this pulse, in the same R: of a slow one the baseline takes the first wave away, and half of its height, as long as it seems to beat twice as fast.</summary>
    /// <param name="second">The second.</param>
    /// <param name="options">The limits.</param>
    public bool IsSeenWhole(in SignalSecond second, JudgeOptions options) =>
        Math.Abs(Math.Log(second.Pulse.PeriodSeconds / (2 * PeriodSeconds))) < options.SamePeriod
        && Math.Abs(second.Fit.Ratio - Ratio) < options.SameRatio;

    /// <summary>Whether the pulses of both lights have shrunk by more than breathing makes them: what comes past a finger takes from both, blood that loses oxygen makes red's grow, and blood that takes it up leaves infrared's.</summary>
    /// <param name="second">The second.</param>
    /// <param name="options">The limits.</param>
    public bool HasShrunkInBoth(in SignalSecond second, JudgeOptions options)
    {
        var infrared = LogHeight - Math.Log(second.Fit.PulseSize);
        return Math.Min(infrared, infrared + Math.Log(Ratio / second.Fit.Ratio)) > options.Slip.Shrink;
    }
}
