using PulseStream.Accuracy.Runs;

namespace PulseStream.Accuracy.Responses;

/// <summary>A course's way from one settled level to the next.</summary>
/// <param name="From">Level before.</param>
/// <param name="To">Level after.</param>
/// <param name="TenPercent">When it left the first tenth, seconds.</param>
/// <param name="HalfWay">When it was half-way.</param>
/// <param name="NinetyPercent">When it reached the last tenth.</param>
/// <param name="Overshoot">How far it went past the new level, in its own unit.</param>
public sealed record Transition(double From, double To, double TenPercent, double HalfWay, double NinetyPercent, double Overshoot)
{
    private const double OvershootSeconds = 30;

    /// <summary>From 10 to 90 % of the way.</summary>
    public double RiseSeconds => NinetyPercent - TenPercent;

    /// <summary>Where the straight line through 10 and 90 % begins.</summary>
    public double Onset => TenPercent - (RiseSeconds / 8);

    /// <summary>The ways between settled levels that differ clearly.</summary>
    /// <param name="course">The course.</param>
    /// <param name="quantity">Decides what is clear.</param>
    public static IReadOnlyList<Transition> Of(TimedValues course, Quantity quantity)
    {
        ArgumentNullException.ThrowIfNull(course);
        var (times, values) = (course.Times.ToArray(), course.Values.ToArray());
        var (spread, step) = quantity == Quantity.Saturation ? (2.0, 3.0) : (6.0, 8.0);
        var levels = Settled.Of(times, Smoothed(values), spread);
        return
        [
            .. levels.Zip(levels.Skip(1))
                .Where(pair => Math.Abs(pair.Second.Level - pair.First.Level) >= step)
                .Select(pair => Between(times, values, pair.First, pair.Second)),
        ];
    }

    private static Transition Between(double[] times, double[] values, Settled before, Settled after)
    {
        var (from, to) = (LevelOf(values, before.From, before.To), LevelOf(values, (after.From + after.To) / 2, after.To));
        double Share(int i) => (values[i] - from) / (to - from);
        var start = (before.From + before.To) / 2;
        var half = start;
        while (half < after.To - 1 && Share(half) < 0.5)
        {
            half++;
        }

        var ten = half;
        while (ten > start && Share(ten - 1) >= 0.1)
        {
            ten--;
        }

        var ninety = half;
        while (ninety < after.To - 1 && Share(ninety) < 0.9)
        {
            ninety++;
        }

        return new(from, to, Crossing(times, Share, ten, 0.1), Crossing(times, Share, half, 0.5), Crossing(times, Share, ninety, 0.9), OvershootOf(times, values, after, ninety, from, to));
    }

    // The value at the index is past the share, the one before it is not.
    private static double Crossing(double[] times, Func<int, double> share, int index, double level)
    {
        if (index == 0 || !(share(index) > share(index - 1)))
        {
            return times[index];
        }

        var part = Math.Clamp((level - share(index - 1)) / (share(index) - share(index - 1)), 0, 1);
        return times[index - 1] + (part * (times[index] - times[index - 1]));
    }

    // What the settled level's own scatter reaches is no overshoot.
    private static double OvershootOf(double[] times, double[] values, Settled after, int ninety, double from, double to)
    {
        var sign = Math.Sign(to - from);
        var smooth = Smoothed(values);
        var most = Enumerable.Range(ninety, after.To - ninety).TakeWhile(i => times[i] - times[ninety] <= OvershootSeconds).Max(i => sign * (smooth[i] - to));
        var middle = (after.From + after.To) / 2;
        var scatter = Enumerable.Range(middle, after.To - middle).Max(i => Math.Abs(smooth[i] - to));
        return most > scatter ? most : 0;
    }

    private static double LevelOf(double[] values, int from, int to) => Settled.MedianOf(values.AsSpan(from, to - from));

    private static double[] Smoothed(double[] values) =>
        [.. values.Select((value, i) => i == 0 || i == values.Length - 1 ? value : Settled.MedianOf([values[i - 1], value, values[i + 1]]))];
}
