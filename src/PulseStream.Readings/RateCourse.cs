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

    /// <summary>Whether the rate of a second can follow on the one told last, which it then replaces.</summary>
    /// <param name="second">The second.</param>
    public bool Continues(in SignalSecond second)
    {
        var rate = second.Pulse.RatePerMinute;
        var age = second.SecondIndex - toldSecond;
        var most = options.LargestRateMiscountPerMinute + (age * options.LargestLeapPerMinute / options.RateAveragingSeconds);
        if (age < options.RateAveragingSeconds && Math.Abs(rate - toldPerMinute) > most)
        {
            return false;
        }

        (toldSecond, toldPerMinute) = (second.SecondIndex, rate);
        return true;
    }
}
