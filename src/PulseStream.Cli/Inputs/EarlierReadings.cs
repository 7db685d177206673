using PulseStream.Archive;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Inputs;

/// <summary>What the archive knows of a person, as far back as a policy looks.</summary>
internal static class EarlierReadings
{
    /// <summary>Readings before an instant, with minutes counted back from it; none where archive, person or instant are not known.</summary>
    public static IReadOnlyList<EarlierReading> Of(string? archive, string? person, DateTimeOffset? instant, TriagePolicy policy, DamagedHistory damaged)
    {
        if (archive is null || person is null || instant is not { } now)
        {
            return [];
        }

        var minutes = policy.Bands.Max(band => band.SecondValue?.ToMinutes ?? 0);
        return
        [
            .. PersonHistory.Before(archive, person, now, minutes, damaged.Tell)
                .Select(past => new EarlierReading(past.Reading.Spo2.Percent, (now - past.Time).TotalMinutes)),
        ];
    }
}
