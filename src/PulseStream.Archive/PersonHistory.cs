using System.Globalization;
using PulseStream.Samples;

namespace PulseStream.Archive;

/// <summary>What the archive knows of a person before an instant.</summary>
public static class PersonHistory
{
    // A session longer than a week is none; and a date is local, up to 14 hours from the day in UTC.
    private const int LongestSessionDays = 7;
    private const int ZoneDays = 1;

    /// <summary>
    /// Accepted readings of a person in [instant − minutes, instant), earliest first. Looks only into days on which such a
    /// session can have begun, and reads only sessions that reach into the time asked for. Undated sessions say nothing.
    /// </summary>
    /// <param name="archiveFolder">The archive; empty where it does not exist.</param>
    /// <param name="person">The person's pseudonym.</param>
    /// <param name="instant">Readings at or after it do not count.</param>
    /// <param name="withinMinutes">How far back to look.</param>
    /// <param name="damaged">Hears of each session that counts and cannot be read: an earlier low reading must not be overlooked in silence.</param>
    /// <exception cref="BadInputException">The pseudonym is none.</exception>
    public static IReadOnlyList<PastReading> Before(string archiveFolder, string person, DateTimeOffset instant, double withinMinutes, Action<BadInputException> damaged)
    {
        var from = instant.AddMinutes(-withinMinutes);
        return
        [
            .. SessionArchive.DaysOf(archiveFolder, Pseudonym.Checked("person", person))
                .Where(day => CanReach(day, from, instant))
                .SelectMany(day => SessionArchive.Below(day, WireNames.SessionKey))
                .Where(SessionArchive.IsSession)
                .SelectMany(folder => Believed(folder, from, instant, damaged))
                .OrderBy(past => past.Time),
        ];
    }

    private static IReadOnlyList<PastReading> Believed(string folder, DateTimeOffset from, DateTimeOffset to, Action<BadInputException> damaged)
    {
        try
        {
            return [.. ReadingsOf(ArchivedSession.Open(folder), from, to)];
        }
        catch (BadInputException problem)
        {
            damaged(problem);
            return [];
        }
    }

    private static bool CanReach(string day, DateTimeOffset from, DateTimeOffset to) =>
        DateOnly.TryParseExact(Path.GetFileName(day)[WireNames.DateKey.Length..], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
        && date >= DateOnly.FromDateTime(from.UtcDateTime).AddDays(-LongestSessionDays - ZoneDays)
        && date <= DateOnly.FromDateTime(to.UtcDateTime).AddDays(ZoneDays);

    private static IEnumerable<PastReading> ReadingsOf(ArchivedSession session, DateTimeOffset from, DateTimeOffset to)
    {
        if (session.Header.Start is not { } start || start >= to || start.AddSeconds(session.Counts.Seconds) < from)
        {
            return [];
        }

        return session.Readings()
            .Select(reading => new PastReading(start.AddSeconds(reading.SecondIndex), session.Identity.Session, reading))
            .Where(past => past.Time >= from && past.Time < to);
    }
}
