using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Whether the beats that were counted are a rate that can be told: where two fair countings differ, none is.</summary>
internal sealed class RateSureness(JudgeOptions options, bool hasRed)
{
    /// <summary>Whether successive intervals differ by more than breathing makes them.</summary>
    /// <param name="pulse">The beats of the window.</param>
    public bool IsIrregular(in WindowPulse pulse) => pulse.Irregularity > options.Irregularity;

    /// <summary>Whether the beats of a believed second can be counted.</summary>
    /// <param name="second">The second.</param>
    public bool IsSure(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return double.IsFinite(pulse.RatePerMinute)
            && pulse.RateSpreadPerMinute < pulse.RatePerMinute
            && !(pulse.Irregularity > options.LargestIrregularity)
            && !(IsIrregular(pulse) && (pulse.RateSpreadPerMinute > options.LargestRateSpreadPerMinute || pulse.Agreement < options.LeastIrregularAgreement))
            && !MissesPeriod(pulse)
            && (second.Fit.Lines == 0 || (IsRateOfPeriod(pulse) && !IsOvertoneOfLine(second)));
    }

    // What repeats has a beat in each period, or two where they come in pairs; another number has waves in it that are none. Noise
    // in one light alone changes the period as well as the beats.
    private bool MissesPeriod(in WindowPulse pulse)
    {
        var beats = pulse.RatePerMinute * pulse.PeriodSeconds / 60;
        return hasRed
            && pulse.Periodicity >= options.LeastPeriodicityOfRate
            && Math.Min(Math.Abs(Math.Log(beats)), Math.Abs(Math.Log(beats / 2))) > options.LargestRateMiss;
    }

    // A line takes part of the pulse along or leaves part of itself: beats that miss the period are waves of neither.
    private bool IsRateOfPeriod(in WindowPulse pulse) =>
        Math.Abs(Math.Log(pulse.RatePerMinute * pulse.PeriodSeconds / 60)) < options.LargestRateMissBesideLines;

    // A lamp on the pulse's own frequency takes its first wave along: what repeats twice as fast may be all that is left of it.
    private bool IsOvertoneOfLine(in SignalSecond second)
    {
        const double half = 0.5;
        return Math.Abs((second.Fit.LineHz * second.Pulse.PeriodSeconds) - half) < options.OvertoneDistance;
    }
}
