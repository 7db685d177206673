using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Triage;

namespace PulseStream.Plots;

/// <summary>Says in words what a session was and how it ended.</summary>
internal static class SessionTitle
{
    // More values than this are told as a range.
    private const int MostValuesListed = 4;

    /// <summary>Source, person and start.</summary>
    /// <param name="session">The session.</param>
    public static IEnumerable<string> Headline(ArchivedSession session)
    {
        yield return Printable(session.Header.Source);
        yield return session.Identity.Person is { } person ? $"person {person}" : "person not told";
        if (session.Header.Start is { } start)
        {
            yield return start.ToString("yyyy-MM-dd HH:mm:ss 'UTC'zzz");
        }
    }

    /// <summary>Outcome, advice, curve and policy.</summary>
    /// <param name="content">The session.</param>
    public static IEnumerable<string> Details(SessionContent content)
    {
        yield return Outcome(content.Sittings);
        yield return Advice(content.Advice);
        yield return content.ArmsPercent > 0
            ? $"curve {Printable(content.Session.Settings.CurveName)} (device accuracy {content.ArmsPercent:0.##} points, in the interval)"
            : $"curve {Printable(content.Session.Settings.CurveName)}";
        yield return $"policy {Printable(content.Session.Settings.PolicyName)}";
        if (content.Session.IsRecovered)
        {
            yield return "cut off, completed later";
        }
    }

    private static string Outcome(IReadOnlyList<Sitting> sittings) => sittings switch
    {
        [] => "no sitting",
        [var only] => OutcomeOf(only),
        _ => $"{sittings.Count} sittings: {string.Join(", ", OutcomesOf(sittings))}",
    };

    private static string OutcomeOf(Sitting sitting) => sitting switch
    {
        { Outcome: SittingOutcome.Accepted, RecordReading: { } record } => $"sitting accepted: {record.WholeSpo2Percent} %{PulseOf(record.PulseRatePerMinute)}",
        { Outcome: SittingOutcome.Unsettled, LowestReading: { } lowest } => $"sitting unsettled: lowest {lowest.WholeSpo2Percent} %",
        { MedianPulseRatePerMinute: { } pulse } => $"sitting without SpO₂{PulseOf(pulse)}",
        { Outcome: SittingOutcome.None } => "sitting without an accepted reading",
        _ => $"sitting {Lower(sitting.Outcome)}",
    };

    private static IEnumerable<string> OutcomesOf(IReadOnlyList<Sitting> sittings)
    {
        foreach (var group in sittings.GroupBy(s => s.Outcome).OrderByDescending(g => g.Key == SittingOutcome.Accepted).ThenByDescending(g => g.Key))
        {
            var count = group.Count();
            var values = group.Select(s => group.Key == SittingOutcome.Accepted ? s.RecordReading : s.LowestReading).OfType<Reading>().Select(r => r.WholeSpo2Percent).ToArray();
            yield return group.Key switch
            {
                SittingOutcome.Accepted when values.Length > 0 => $"{count} accepted ({Listed(values)})",
                SittingOutcome.Unsettled when values.Length > 0 => $"{count} unsettled (lowest {values.Min()} %)",
                SittingOutcome.None => $"{count} without an accepted reading",
                _ => $"{count} {Lower(group.Key)}",
            };
        }
    }

    private static string Listed(int[] values) => values.Length <= MostValuesListed
        ? string.Join(", ", values) + " %"
        : $"{values.Min()} to {values.Max()} %";

    private static string PulseOf(int? pulse) => pulse is { } known ? $", pulse {known}/min" : string.Empty;

    private static string Advice(IReadOnlyList<ArchivedAdvice> advice)
    {
        if (advice.Count == 0)
        {
            return "no advice";
        }

        var highest = advice.MaxBy(a => AdviceLevelName.TryParse(a.Level, out var level) ? (int)level : -1)!;
        return highest.RecheckAfterMinutes switch
        {
            null => $"highest advice: {highest.Level}",
            0 => $"highest advice: {highest.Level} now",
            var minutes => $"highest advice: {highest.Level} in {minutes} min",
        };
    }

    private static string Lower(SittingOutcome outcome) => outcome.ToString().ToLowerInvariant();

    // Names come from files: a line break in one must not break the picture.
    private static string Printable(string text) => string.Concat(text.Select(c => char.IsControl(c) ? '?' : c));
}
