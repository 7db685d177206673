namespace PulseStream.Course;

/// <summary>The course of one person's resting SpO2 over days.</summary>
/// <param name="Baseline">What is usual: the highest steady level of the last 30 days, so that a lasting fall does not become usual; without the last value, which is held against it.</param>
/// <param name="Changes">Lasting changes in order.</param>
public sealed record PersonCourse(Baseline Baseline, IReadOnlyList<LevelChange> Changes)
{
    // What was usual longer ago may have been another place or another season (common practice).
    private const int BaselineDays = 30;

    // Fewer values make no level.
    private const int FewestValues = 5;

    /// <summary>The course of readings.</summary>
    /// <param name="readings">One of each sitting, in the order of time; at least one.</param>
    /// <param name="options">The change detector's numbers.</param>
    public static PersonCourse Of(IReadOnlyList<CoursePoint> readings, ChangeOptions options)
    {
        ArgumentNullException.ThrowIfNull(readings);
        ArgumentNullException.ThrowIfNull(options);
        ArgumentOutOfRangeException.ThrowIfZero(readings.Count);
        var points = Together(readings, options.HoursOfOneValue);
        var levels = ChangeDetector.Levels(points, options);
        return new PersonCourse(BaselineOf(points, levels), [.. levels.Skip(1).Select(level => level.Before!)]);
    }

    private static Baseline BaselineOf(List<CoursePoint> points, IReadOnlyList<ChangeDetector.Level> levels)
    {
        // The last value is what is held against the baseline: it is no part of it where there are others.
        var before = Math.Max(1, points.Count - 1);
        var since = points[^1].Time.AddDays(-BaselineDays);
        var values = levels
            .Select(level => points[level.First..Math.Max(level.First, Math.Min(level.End, before))].Where(point => point.Time >= since).Select(point => point.Spo2Percent).ToList())
            .Where(level => level.Count > 0)
            .ToList();
        return values.Where(level => level.Count >= FewestValues).Select(Baseline.Of).MaxBy(level => level.Percent)
            ?? Baseline.Of(values.MaxBy(level => level.Count) ?? [points[^1].Spo2Percent]);
    }

    private static List<CoursePoint> Together(IReadOnlyList<CoursePoint> readings, double hours)
    {
        var (together, group) = (new List<CoursePoint>(), new List<CoursePoint>());
        foreach (var reading in readings)
        {
            if (group.Count > 0 && (reading.Time - group[0].Time).TotalHours >= hours)
            {
                Close();
            }

            group.Add(reading);
        }

        Close();
        return together;

        void Close()
        {
            together.Add(group[^1] with { Spo2Percent = group.Average(point => point.Spo2Percent) });
            group.Clear();
        }
    }
}
