using System.Globalization;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Output.Text;
using PulseStream.Course;

namespace PulseStream.Cli.Output;

/// <summary>Shows a course to people: what is usual, where it stands now, what changed, what was missed.</summary>
internal static class TrendText
{
    // Fewer readings of a time of day say little of it.
    private const int HoursOfATime = 6;

    private static readonly string[] TimesOfDay = ["night (0 to 6 h)", "morning (6 to 12 h)", "afternoon (12 to 18 h)", "evening (18 to 24 h)"];

    public static void Print(TextWriter text, PersonTrend trend)
    {
        var (baseline, last) = (trend.Course.Baseline, trend.Last);
        text.WriteLine($"Person {trend.Person}: {trend.Days.Readings.Count} readings on {trend.DaysWithReadings} days, {Day(trend.Days.Readings[0].Time)} to {Day(trend.Days.Readings[^1].Time)}.");
        text.WriteLine($"  usual       {baseline.Percent:0.0} % (95 % interval {baseline.LowPercent:0.0} to {baseline.HighPercent:0.0}, {baseline.Values} values)");
        text.WriteLine($"  last        {last.Reading.WholeSpo2Percent} % at {Time(last.Time)}, {Interval.Outward(last.Reading.Spo2)}");
        text.WriteLine($"  drop        {trend.ShownDropPoints:0.0} points");
        if (trend is { Expected: { } expected, AltitudeMetres: { } metres })
        {
            text.WriteLine($"  at {metres:0} m   {expected.LowPercent:0} to {expected.HighPercent:0} % by height alone in healthy adults; no limit is lowered by it");
        }

        Changes(text, trend.Course.Changes);
        Exertions(text, trend.Days.Exertions);
        Checks(text, trend);
        Times(text, trend.Days);
        text.WriteLine();
        foreach (var line in Wrapped.Lines("A course is no diagnosis. Whoever feels unwell calls a doctor, whatever the numbers say."))
        {
            text.WriteLine($"  {line}");
        }
    }

    private static void Changes(TextWriter text, IReadOnlyList<LevelChange> changes)
    {
        text.WriteLine();
        text.WriteLine(changes.Count == 0 ? "  No lasting change found." : "  Lasting changes:");
        foreach (var change in changes)
        {
            var sensor = change.IsOtherSensor ? "; the sensor changed meanwhile" : "";
            text.WriteLine($"    {(change.SizePoints < 0 ? "fall" : "rise")} of {Math.Abs(change.SizePoints):0.0} points, {Time(change.From)} to {Time(change.To)}, found {Time(change.Found)}{sensor}");
        }
    }

    private static void Exertions(TextWriter text, IReadOnlyList<ExertionPair> pairs)
    {
        foreach (var pair in pairs)
        {
            var said = pair.DropPoints >= ExertionPair.SaidPoints ? $"  FELL BY {pair.DropPoints} POINTS: tell a doctor today" : "";
            text.WriteLine($"  after exertion, {Time(pair.Time)}: {pair.RestPercent} % at rest, {pair.AfterPercent} % after it{said}");
        }
    }

    private static void Checks(TextWriter text, PersonTrend trend)
    {
        var checks = trend.Days.Checks;
        if (checks.Count > 0)
        {
            text.WriteLine();
            text.WriteLine($"  Rechecks asked for: {checks.Count}, done {checks.Count(check => check.Done is not null)}, of them late {checks.Count(check => check.Done > check.Due)}.");
            foreach (var missed in trend.Missed)
            {
                text.WriteLine($"    MISSED: due {Time(missed.Due)}");
            }
        }
    }

    private static void Times(TextWriter text, PersonDays days)
    {
        text.WriteLine();
        foreach (var time in days.Readings.GroupBy(reading => reading.Time.Hour / HoursOfATime).OrderBy(group => group.Key))
        {
            var count = time.Count() == 1 ? "1 reading" : $"{time.Count()} readings";
            text.WriteLine($"  {TimesOfDay[time.Key],-22} mean {time.Average(reading => reading.Reading.Spo2.Percent):0.0} %, {count}");
        }
    }

    private static string Day(DateTimeOffset time) => time.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Time(DateTimeOffset time) => time.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);
}
