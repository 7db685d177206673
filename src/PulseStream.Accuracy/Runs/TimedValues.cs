namespace PulseStream.Accuracy.Runs;

/// <summary>What an instrument showed over time.</summary>
public sealed class TimedValues
{
    // A value is taken to stand, or to run straight to the next, for so long; then it is a gap. An instrument that tells
    // a value every ten seconds has none between them.
    private const double LeastGapSeconds = 5;
    private const double GapIntervals = 2.5;

    private readonly double longestGapSeconds;

    private readonly double[] times;
    private readonly double[] values;

    /// <summary>A course.</summary>
    /// <param name="times">Seconds, rising.</param>
    /// <param name="values">What was shown, as many.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lengths differ or a time does not rise.</exception>
    public TimedValues(IReadOnlyList<double> times, IReadOnlyList<double> values)
    {
        ArgumentNullException.ThrowIfNull(times);
        ArgumentNullException.ThrowIfNull(values);
        ArgumentOutOfRangeException.ThrowIfNotEqual(values.Count, times.Count);
        for (var i = 1; i < times.Count; i++)
        {
            if (!(times[i] > times[i - 1]))
            {
                throw new ArgumentOutOfRangeException(nameof(times), times[i], "The times of a course rise.");
            }
        }

        (this.times, this.values) = ([.. times], [.. values]);
        double[] intervals = [.. this.times.Skip(1).Zip(this.times, (later, earlier) => later - earlier).Order()];
        longestGapSeconds = intervals.Length == 0 ? LeastGapSeconds : Math.Max(LeastGapSeconds, GapIntervals * intervals[intervals.Length / 2]);
    }

    /// <summary>Seconds, rising.</summary>
    public IReadOnlyList<double> Times => times;

    /// <summary>What was shown.</summary>
    public IReadOnlyList<double> Values => values;

    /// <summary>The value at a time, on the straight line between its neighbours; NaN outside and in gaps.</summary>
    /// <param name="seconds">When.</param>
    public double At(double seconds)
    {
        var found = Array.BinarySearch(times, seconds);
        if (found >= 0)
        {
            return values[found];
        }

        var next = ~found;
        if (next == 0 || next == times.Length || times[next] - times[next - 1] > longestGapSeconds)
        {
            return double.NaN;
        }

        var share = (seconds - times[next - 1]) / (times[next] - times[next - 1]);
        return values[next - 1] + (share * (values[next] - values[next - 1]));
    }
}
