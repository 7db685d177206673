using PulseStream.Archive;
using PulseStream.Samples;
using PulseStream.Triage;

namespace PulseStream.Comparison;

/// <summary>Results as an archive keeps them.</summary>
public static class ArchivedResults
{
    // person=ID/date=DAY/session=ID
    private const int FoldersOfASession = 3;

    /// <summary>The recording of a session as it was named; the folder's name where that cannot be read.</summary>
    /// <param name="folder">The session's folder.</param>
    public static string SourceOf(string folder)
    {
        try
        {
            return ArchivedSession.Open(folder).Header.Source;
        }
        catch (BadInputException)
        {
            return Path.GetFileName(folder);
        }
    }

    /// <summary>The results of a session; where its files are damaged, what is wrong instead.</summary>
    /// <param name="folder">The session's folder.</param>
    public static RecordingResults Read(string folder)
    {
        var (source, identity) = (Path.GetFileName(folder), IdentityOf(folder));
        try
        {
            var session = ArchivedSession.Open(folder);
            source = session.Header.Source;
            return Of(session) with { Session = identity };
        }
        catch (BadInputException problem)
        {
            return new RecordingResults(source) { Session = identity, Problem = problem.Message };
        }
    }

    private static RecordingResults Of(ArchivedSession session)
    {
        var (outline, settings) = (session.Outline(), session.Settings);
        return new(session.Header.Source)
        {
            Readings = [.. outline.Readings.Select(reading => new AcceptedValue(reading.SecondIndex, reading.WholeSpo2Percent))],
            Advice = [.. outline.Advice.Select(LevelOf)],
            Sittings = [.. outline.Sittings.Select(sitting => new FingerSpan(sitting.FromSecond, sitting.ToSecond))],
            Seconds = session.Counts.Seconds,
            UsableSeconds = session.Counts.UsableSeconds,
            JudgedBy = JudgedBy.Of(settings.CurveName, settings.CurveHash, settings.PolicyName, settings.PolicyHash, settings.Version),
        };
    }

    // A level of a later version would be overlooked if it were left out: the most urgent one is assumed.
    private static GivenLevel LevelOf(OutlinedAdvice advice) =>
        new(advice.Second, AdviceLevelName.TryParse(advice.Level, out var level) ? level : AdviceLevel.Emergency);

    /// <summary>Person, date and session of a session's folder.</summary>
    /// <param name="folder">The folder.</param>
    public static string IdentityOf(string folder) =>
        string.Join('/', Path.GetFullPath(folder).Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries).TakeLast(FoldersOfASession));
}
