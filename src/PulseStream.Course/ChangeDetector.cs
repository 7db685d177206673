namespace PulseStream.Course;

/// <summary>Finds lasting changes in a person's values: a steady level watched in both directions, and after each change anew.</summary>
public static class ChangeDetector
{
    // How far before the sum began to rise a slow fall may have begun, and how long after its finding it may go on, in values.
    private const int ValuesBefore = 6;
    private const int ValuesAfter = 9;

    /// <summary>The changes in order. No change is found by a value after <see cref="LevelChange.Found"/>; later values only tell where it ended.</summary>
    /// <param name="points">In the order of time.</param>
    /// <param name="options">The detector's numbers.</param>
    public static IReadOnlyList<LevelChange> Changes(IReadOnlyList<CoursePoint> points, ChangeOptions options) =>
        [.. Levels(points, options).Skip(1).Select(level => level.Before!)];

    /// <summary>The levels between changes, each with the change before it.</summary>
    internal static IReadOnlyList<Level> Levels(IReadOnlyList<CoursePoint> points, ChangeOptions options)
    {
        var levels = new List<Level>();
        var (first, change) = (0, (LevelChange?)null);
        while (true)
        {
            if (NextAlarm(points, first, options) is not { } alarm)
            {
                levels.Add(new Level(first, points.Count, change));
                return levels;
            }

            var fit = RampFit.Of(
                points, first, Math.Max(first, alarm.Index - alarm.Run - ValuesBefore), alarm.Index - 1, Math.Min(points.Count, alarm.Index + 1 + ValuesAfter));
            levels.Add(new Level(first, fit.From + 1, change));
            change = new LevelChange(
                points[fit.From].Time, points[fit.To].Time, fit.SizePoints, points[alarm.Index].Time, !string.Equals(points[fit.From].Sensor, points[fit.To].Sensor, StringComparison.Ordinal));
            first = fit.To;
        }
    }

    private static (int Index, int Run)? NextAlarm(IReadOnlyList<CoursePoint> points, int first, ChangeOptions options)
    {
        var level = new SteadyLevel(options);
        var (down, up) = (new Cusum(options.Allowance, options.Limit), new Cusum(options.Allowance, options.Limit));
        for (var i = first; i < points.Count; i++)
        {
            if (level.Score(points[i].Spo2Percent) is { } score)
            {
                down.Add(-score);
                up.Add(score);
            }

            if (down.IsBeyond || up.IsBeyond)
            {
                return (i, down.IsBeyond ? down.Run : up.Run);
            }
        }

        return null;
    }

    /// <summary>Values [First, End) of one level.</summary>
    internal readonly record struct Level(int First, int End, LevelChange? Before);
}
