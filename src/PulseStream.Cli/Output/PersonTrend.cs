using PulseStream.Cli.Inputs;
using PulseStream.Course;

namespace PulseStream.Cli.Output;

/// <summary>What `trend` tells of a person.</summary>
/// <param name="Person">Pseudonym.</param>
/// <param name="Days">What the archive holds.</param>
/// <param name="Course">What it comes to.</param>
/// <param name="AltitudeMetres">Where the person is; null where not told.</param>
/// <param name="Now">The present, for what is still to come.</param>
internal sealed record PersonTrend(string Person, PersonDays Days, PersonCourse Course, double? AltitudeMetres, DateTimeOffset Now)
{
    public TimedReading Last => Days.Records.Count > 0 ? Days.Records[^1] : Days.Readings[^1];

    /// <summary>Points by which the last reading lies below the baseline.</summary>
    public double DropPoints => Course.Baseline.Percent - Last.Reading.WholeSpo2Percent;

    /// <summary>The same to a tenth, as people read it: what rounds to nothing has no sign.</summary>
    public double ShownDropPoints => Math.Round(DropPoints, 1) + 0.0;

    /// <summary>Days with a reading, by the local date.</summary>
    public int DaysWithReadings => Days.Readings.Select(reading => reading.Time.Date).Distinct().Count();

    /// <summary>What the height alone does; null where it is not told.</summary>
    public (double LowPercent, double HighPercent)? Expected => AltitudeMetres is { } metres ? Altitude.ExpectedPercent(metres) : null;

    /// <summary>Checks that were due and did not come.</summary>
    public IEnumerable<PlannedCheck> Missed => Days.Checks.Where(check => check.Done is null && check.Due < Now);
}
