using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Whether the beats that were counted are a rate that can be told: where two fair countings differ, none is.</summary>
internal sealed class RateSureness(JudgeOptions options, bool hasRed)
{
    private readonly RateCourse course = new(options);
    private int doubts;
    private double irregularity;

    /// <summary>Whether successive intervals differ by more than breathing makes them, in the window of the next believed second or on the average of the last ones.</summary>
    /// <param name="pulse">The beats of the window.</param>
    public bool IsIrregular(in WindowPulse pulse)
    {
        irregularity += (Math.Min(pulse.Irregularity, options.MostIrregularity) - irregularity) / options.RateAveragingSeconds;
        return IsIrregularNow(pulse) || irregularity > options.Irregularity;
    }

    /// <summary>Whether the rate of the next believed second can be told; later seconds are held against those that were.</summary>
    /// <param name="second">The second.</param>
    public bool IsSure(in SignalSecond second)
    {
        doubts = second.Pulse.RateSpreadPerMinute >= second.Pulse.RatePerMinute ? Math.Min(doubts + 1, options.MostDoubts) : Math.Max(doubts - 1, 0);
        return IsCounted(second) && doubts < options.LeastDoubts && course.Continues(second);
    }

    private bool IsIrregularNow(in WindowPulse pulse) => pulse.Irregularity > options.Irregularity;

    private bool IsCounted(in SignalSecond second)
    {
        var pulse = second.Pulse;
        return double.IsFinite(pulse.RatePerMinute)
            && pulse.RateSpreadPerMinute < pulse.RatePerMinute
            && !(pulse.Irregularity > (pulse.Periodicity < options.LeastPeriodicityOfTurns ? options.LargestIrregularityWithoutRhythm : options.LargestIrregularity))
            && !(IsIrregularNow(pulse) && (pulse.RateSpreadPerMinute > options.LargestRateSpreadPerMinute || pulse.Agreement < options.LeastIrregularAgreement))
            && !MissesPeriod(pulse)
            && (second.Fit.Lines == 0 || (second.Fit.WindowSeconds >= options.LeastRateSecondsBesideLines && IsRateOfPeriod(pulse) && !IsOvertoneOfLine(second)));
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

    // A lamp on the pulse's first or third wave takes it along: what repeats twice as fast may be all that is left of it.
    private bool IsOvertoneOfLine(in SignalSecond second)
    {
        const double first = 0.5, third = 1.5;
        var line = second.Fit.LineHz * second.Pulse.PeriodSeconds;
        return !IsBesideBreathing(second) && Math.Min(Math.Abs(line - first), Math.Abs(line - third)) < options.OvertoneDistance;
    }

    // Breathing's second wave lies on half the rate of a pulse four times as fast, and is no lamp. Beside a lamp the pulse's third
    // wave turns over each time, and two periods repeat better than one; those of a pulse of its own do not.
    private bool IsBesideBreathing(in SignalSecond second) =>
        second.Fit.LineHz <= options.FastestBreathingWaveHz
        && second.Pulse.PeriodicityOfTwo > 0
        && second.Pulse.PeriodicityOfTwo < second.Pulse.Periodicity;
}
