using PulseStream.Triage;

namespace PulseStream.Comparison;

/// <summary>Which alarms one run gave and another did not, sitting by sitting.</summary>
internal static class Alarms
{
    /// <summary>Whether an alarm of a run is weaker or missing in another.</summary>
    /// <param name="had">The run that gave it.</param>
    /// <param name="lacks">The other run.</param>
    /// <param name="alarmFrom">The least urgent level that counts as an alarm.</param>
    public static bool IsAnyMissing(RecordingResults had, RecordingResults lacks, AdviceLevel alarmFrom) =>
        IsWeaker(had.HighestLevel, lacks.HighestLevel, alarmFrom) || SpansOf(had).Any(span => IsWeaker(HighestIn(had, span), HighestMeeting(lacks, span), alarmFrom));

    private static bool IsWeaker(AdviceLevel? had, AdviceLevel? lacks, AdviceLevel alarmFrom) =>
        had is { } level && level >= alarmFrom && !(lacks >= level);

    // An advice outside every sitting stands for itself.
    private static IEnumerable<FingerSpan> SpansOf(RecordingResults results) =>
    [
        .. results.Sittings,
        .. results.Sittings.Count == 0 ? [] : results.Advice
            .Where(given => !results.Sittings.Any(span => Holds(span, given)))
            .Select(given => new FingerSpan(given.Second, given.Second)),
    ];

    private static AdviceLevel? HighestIn(RecordingResults results, FingerSpan span) =>
        Highest(results.Advice.Where(given => Holds(span, given)));

    // A sitting may begin or end a little otherwise, or be two: whatever touches it answers for it.
    private static AdviceLevel? HighestMeeting(RecordingResults results, FingerSpan span) =>
        Highest(results.Advice.Where(given => Holds(span, given) || results.Sittings.Any(other => other.Meets(span) && Holds(other, given))));

    private static AdviceLevel? Highest(IEnumerable<GivenLevel> advice) =>
        advice.Select(given => (AdviceLevel?)given.Level).Max();

    private static bool Holds(FingerSpan span, GivenLevel given) => given.Second >= span.From && given.Second <= span.To;
}
