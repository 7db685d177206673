using System.Globalization;
using PulseStream.Course;

namespace PulseStream.Cli.Output;

/// <summary>Shows a course as one JSON object a line.</summary>
internal static class TrendLines
{
    public static void Print(NdjsonLine line, PersonTrend trend)
    {
        Course(line, trend);
        foreach (var change in trend.Course.Changes)
        {
            Print(line, change);
        }

        foreach (var pair in trend.Days.Exertions)
        {
            line.Begin(TrendNames.Exertion)
                .Add(WireNames.Time, Text(pair.Time))
                .Add(TrendNames.Rest, (long?)pair.RestPercent)
                .Add(TrendNames.After, (long?)pair.AfterPercent)
                .Add(TrendNames.Drop, (long?)pair.DropPoints)
                .End();
        }

        foreach (var check in trend.Days.Checks)
        {
            line.Begin(TrendNames.Recheck).Add(TrendNames.Due, Text(check.Due)).AddText(TrendNames.Done, check.Done is { } done ? Text(done) : null).End();
        }
    }

    private static void Course(NdjsonLine line, PersonTrend trend) => line.Begin(TrendNames.Course)
        .Add(TrendNames.Person, trend.Person)
        .Add(TrendNames.Baseline, trend.Course.Baseline.Percent)
        .Add(TrendNames.BaselineLow, trend.Course.Baseline.LowPercent)
        .Add(TrendNames.BaselineHigh, trend.Course.Baseline.HighPercent)
        .Add(TrendNames.Last, (long?)trend.Last.Reading.WholeSpo2Percent)
        .Add(TrendNames.LastTime, Text(trend.Last.Time))
        .Add(TrendNames.Drop, trend.DropPoints)
        .Add(TrendNames.Days, (long?)trend.DaysWithReadings)
        .Add(WireNames.ReadingCount, (long?)trend.Days.Readings.Count)
        .Add(TrendNames.ExpectedLow, trend.Expected?.LowPercent)
        .Add(TrendNames.ExpectedHigh, trend.Expected?.HighPercent)
        .End();

    private static void Print(NdjsonLine line, LevelChange change) => line.Begin(TrendNames.Change)
        .Add(WireNames.From, Text(change.From))
        .Add(WireNames.To, Text(change.To))
        .Add(TrendNames.Size, change.SizePoints)
        .Add(TrendNames.Found, Text(change.Found))
        .Add(TrendNames.OtherSensor, change.IsOtherSensor)
        .End();

    private static string Text(DateTimeOffset time) => time.ToString("yyyy-MM-dd'T'HH:mm:sszzz", CultureInfo.InvariantCulture);
}
