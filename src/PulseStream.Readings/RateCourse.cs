using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>
/// Whether a rate can follow on those told in the last seconds. The mean of eight seconds shares most of its beats with the
/// one a second before: it does not double at once, whatever the heart does; a count does that takes second waves for beats.
/// </summary>
internal sealed class RateCourse(JudgeOptions options)
{
    private long toldSecond = long.MinValue / 2;
    private double toldPerMinute;
    private long calmSecond = long.MinValue / 2;
    private double calmPerMinute;

    /// <summary>The finger has left: its rate at rest says nothing of the next.</summary>
    public void Forget() => calmSecond = long.MinValue / 2;

    /// <summary>Whether the rate of a second can follow on the one told last, which it then replaces.</summary>
    /// <param name="second">The second.</param>
    public bool Continues(in SignalSecond second)
    {
        var rate = second.Pulse.RatePerMinute;
        var isCalm = second.Fit is { Lines: 0, IsSeparated: false } && second.Fit.Disagreement <= options.UnprovenDisagreement;
        var age = second.SecondIndex - toldSecond;
        var most = options.LargestRateMiscountPerMinute + (age * options.LargestLeapPerMinute / options.RateAveragingSeconds);
        if ((age < options.RateAveragingSeconds && Math.Abs(rate - toldPerMinute) > most) || (!isCalm && IsMultipleOfCalm(second.SecondIndex, rate)))
        {
            return false;
        }

        (toldSecond, toldPerMinute) = (second.SecondIndex, rate);
        if (isCalm)
        {
            (calmSecond, calmPerMinute) = (toldSecond, rate);
        }

        return true;
    }

    /// <summary>Whether the rate of a second is the one that was counted at rest a short time before.</summary>
    /// <param name="second">The second.</param>
    public bool IsAsAtRest(in SignalSecond second) =>
        second.SecondIndex - calmSecond < options.CalmRateSeconds
        && Math.Abs(Math.Log(second.Pulse.RatePerMinute / calmPerMinute)) < options.RateMultipleShare;

    // Movement and lines hide every second beat, or show a second wave as one; no heart that was counted at rest beats half or twice as
    // fast as then just while it cannot be seen as well.
    private bool IsMultipleOfCalm(long secondIndex, double ratePerMinute) =>
        secondIndex - calmSecond < options.CalmRateSeconds
        && Math.Abs(Math.Abs(Math.Log(ratePerMinute / calmPerMinute)) - Math.Log(2)) < options.RateMultipleShare;
}
