using PulseStream.Readings;

namespace PulseStream.Plots;

/// <summary>Consecutive seconds [From, To) that have something in common.</summary>
/// <param name="From">The first second.</param>
/// <param name="To">The second just past the last.</param>
/// <param name="Points">One value for each of them, in order.</param>
/// <typeparam name="T">What is known of each second.</typeparam>
internal sealed record SecondRun<T>(long From, long To, IReadOnlyList<T> Points)
    where T : struct
{
    /// <summary>Cuts seconds into runs; a second without a value, or one left out, ends a run.</summary>
    /// <param name="seconds">In order.</param>
    /// <param name="valueOf">The value of a second; null where it has none.</param>
    public static IEnumerable<SecondRun<T>> Of(IEnumerable<Second> seconds, Func<Second, T?> valueOf)
    {
        var points = new List<T>();
        long next = 0;
        foreach (var second in seconds)
        {
            var value = valueOf(second);
            if (points.Count > 0 && (value is null || second.SecondIndex != next))
            {
                yield return new(next - points.Count, next, points);
                points = [];
            }

            if (value is { } known)
            {
                points.Add(known);
            }

            next = second.SecondIndex + 1;
        }

        if (points.Count > 0)
        {
            yield return new(next - points.Count, next, points);
        }
    }
}
