namespace PulseStream.Readings;

/// <summary>
/// Whether a rate can follow on those told in the last seconds. The mean of eight seconds shares most of its beats with the
/// one a second before: it does not double at once, whatever the heart does; a count does that takes second waves for beats.
/// </summary>
internal sealed class RateCourse(JudgeOptions options)
{
    private long toldSecond = long.MinValue / 2;
    private double toldPerMinute;

    /// <summary>Whether a rate can follow on the one told last, which it then replaces.</summary>
    /// <param name="secondIndex">The second whose rate it is.</param>
    /// <param name="ratePerMinute">The rate.</param>
    public bool Continues(long secondIndex, double ratePerMinute)
    {
        var age = secondIndex - toldSecond;
        var most = options.LargestRateMiscountPerMinute + (age * options.LargestLeapPerMinute / options.RateAveragingSeconds);
        if (age < options.RateAveragingSeconds && Math.Abs(ratePerMinute - toldPerMinute) > most)
        {
            return false;
        }

        toldSecond = secondIndex;
        toldPerMinute = ratePerMinute;
        return true;
    }
}
