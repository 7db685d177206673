using PulseStream.Archive;
using PulseStream.Course;
using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Cli.Inputs;

/// <summary>What an archive holds of one person, over all days.</summary>
internal sealed class PersonDays
{
    private readonly List<TimedReading> _readings = [];
    private readonly List<TimedReading> _records = [];
    private readonly List<TimedReading> _exerted = [];
    private readonly List<PlannedCheck> _planned = [];
    private string? _lastAdvised;

    /// <summary>Every accepted reading in the order of time.</summary>
    public IReadOnlyList<TimedReading> Readings => _readings;

    /// <summary>The reading of each sitting in the order of time: that of record, of an unsettled sitting the lowest.</summary>
    public IReadOnlyList<TimedReading> Records => _records;

    /// <summary>Checks that advice asked for, each with the reading that followed.</summary>
    public IReadOnlyList<PlannedCheck> Checks { get; private set; } = [];

    /// <summary>Checks after exertion, each with the reading at rest before it.</summary>
    public IReadOnlyList<ExertionPair> Exertions { get; private set; } = [];

    /// <summary>The last advice of the last session with any; null where none was given.</summary>
    public ArchivedAdvice? LastAdvice { get; private set; }

    /// <summary>Sessions that could not be read.</summary>
    public int Damaged { get; private set; }

    /// <summary>Reads an archive.</summary>
    /// <param name="archive">Its folder.</param>
    /// <param name="person">Pseudonym.</param>
    /// <param name="damaged">Hears of each session that cannot be read.</param>
    /// <exception cref="BadInputException">Nothing is known of the person.</exception>
    public static PersonDays Read(string archive, string person, Action<string> damaged)
    {
        var sessions = SessionArchive.SessionsOf(archive, person);
        if (sessions.Count == 0)
        {
            throw new BadInputException(archive, $"expected sessions of person {person}, found none", "Check --archive and --person and run again");
        }

        var days = new PersonDays();
        foreach (var content in ManyFolders.Read(sessions, SessionContents.Read, CancellationToken.None))
        {
            days.Add(content, damaged);
        }

        days.Sort();
        days.LastAdvice = days._lastAdvised is { } folder ? ArchivedSession.Open(folder).Advice().LastOrDefault() : null;
        return days._readings.Count > 0
            ? days
            : throw new BadInputException(archive, $"expected accepted readings of person {person} at a known time, found none in {sessions.Count} sessions", "Record with a clock, or replay with --start");
    }

    private void Add(SessionContents content, Action<string> damaged)
    {
        if (content.Problem is { } problem)
        {
            Damaged++;
            damaged(problem);
            return;
        }

        if (content.Start is not { } start)
        {
            damaged($"{content.Folder}: when it began is not known, so it is left out.");
            return;
        }

        if (content.IsAfterExertion)
        {
            _exerted.AddRange(content.Readings.OrderBy(reading => reading.WholeSpo2Percent).Take(1).Select(reading => Timed(reading, start, content.Sensor)));
            return;
        }

        _readings.AddRange(content.Readings.Select(reading => Timed(reading, start, content.Sensor)));
        _records.AddRange(content.Sittings
            .Select(sitting => sitting.RecordReading ?? sitting.LowestReading)
            .OfType<Reading>()
            .Select(reading => Timed(reading, start, content.Sensor)));
        _planned.AddRange(content.Sittings
            .Select(sitting => content.Advice.LastOrDefault(advice => advice.Second >= sitting.FromSecond && advice.Second <= sitting.ToSecond))
            .Where(advice => advice.RecheckAfterMinutes is not null)
            .Select(advice => new PlannedCheck(start.AddSeconds(advice.Second), start.AddSeconds(advice.Second).AddMinutes(advice.RecheckAfterMinutes!.Value), null)));
        _lastAdvised = content.Advice.Count > 0 ? content.Folder : _lastAdvised;
    }

    private void Sort()
    {
        _readings.Sort((a, b) => a.Time.CompareTo(b.Time));
        _records.Sort((a, b) => a.Time.CompareTo(b.Time));
        Exertions =
        [
            .. _exerted.OrderBy(after => after.Time)
                .Select(after => (After: after, AtRest: _records.FindLast(rest => rest.Time <= after.Time && after.Time - rest.Time <= ExertionPair.Longest)))
                .Where(pair => pair.AtRest is not null)
                .Select(pair => new ExertionPair(pair.After.Time, pair.AtRest!.Reading.WholeSpo2Percent, pair.After.Reading.WholeSpo2Percent)),
        ];
        Checks =
        [
            .. _planned.OrderBy(check => check.Due).Select(check =>
            {
                var next = _readings.FindIndex(reading => reading.Time > check.Asked);
                return check with { Done = next < 0 ? null : _readings[next].Time };
            }),
        ];
    }

    private static TimedReading Timed(Reading reading, DateTimeOffset start, string? sensor) => new(start.AddSeconds(reading.SecondIndex), reading, sensor);

    /// <summary>The values of the course.</summary>
    public IReadOnlyList<CoursePoint> Points() =>
        [.. (_records.Count > 0 ? _records : _readings).Select(timed => new CoursePoint(timed.Time, timed.Reading.Spo2.Percent, timed.Sensor))];
}
