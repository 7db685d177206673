using System.Text.Json;
using PulseStream.Samples;

namespace PulseStream.Archive.Sealing;

/// <summary>session.json. While the session runs, its journal holds the same without counts and files.</summary>
internal sealed record SessionDocument
{
    /// <summary>Layout of the session's files that this program writes and reads.</summary>
    public const int CurrentSchema = 1;

    public required int SchemaVersion { get; init; }

    public required string Session { get; init; }

    public required string? Person { get; init; }

    public required string Source { get; init; }

    public required double SampleRateHz { get; init; }

    public required IReadOnlyList<string> Columns { get; init; }

    public required double? FullScale { get; init; }

    public required DateTimeOffset? Start { get; init; }

    public required string? Sensor { get; init; }

    public required string? Site { get; init; }

    /// <summary>What the person had just done; null for rest.</summary>
    public string? Activity { get; init; }

    public required string Curve { get; init; }

    public required JsonElement CurveSettings { get; init; }

    /// <summary>Told beside the curve for those who look for one; never read back.</summary>
    public string CurveHash => SettingsHash.Of(CurveSettings.GetRawText());

    public required string Policy { get; init; }

    public required JsonElement PolicySettings { get; init; }

    /// <summary>The same of the policy.</summary>
    public string PolicyHash => SettingsHash.Of(PolicySettings.GetRawText());

    public required string Version { get; init; }

    /// <summary>Whether the session was cut off and completed later from its journal.</summary>
    public bool Recovered { get; init; }

    /// <summary>Whether a replay was cancelled before the recording's end.</summary>
    public bool Cancelled { get; init; }

    /// <summary>Samples a second by the computer's clock, where a live source could tell.</summary>
    public double? ArrivalRateHz { get; init; }

    public SessionCounts? Counts { get; init; }

    public IReadOnlyDictionary<string, StoredFile>? Files { get; init; }

    /// <summary>Readings, sittings and advice of a short session; null for a long one, and in sessions of earlier versions.</summary>
    public OutlineDocument? Outline { get; init; }

    /// <summary>SHA-256 of session.json itself, taken with zeros in this place; <see cref="SessionDocumentFile"/> sets it.</summary>
    public string Seal { get; init; } = string.Empty;

    /// <summary>What is known before the first sample.</summary>
    /// <param name="identity">Whose session.</param>
    /// <param name="header">The recording.</param>
    /// <param name="settings">How it is judged.</param>
    public static SessionDocument Of(SessionIdentity identity, RecordingHeader header, SessionSettings settings) => new()
    {
        SchemaVersion = CurrentSchema,
        Session = identity.Session,
        Person = identity.Person,
        Source = header.Source,
        SampleRateHz = header.Rate.Hz,
        Columns = WireNames.Of(header.Columns),
        FullScale = header.FullScaleCounts,
        Start = header.Start,
        Sensor = identity.Sensor,
        Site = identity.Site,
        Activity = identity.Activity,
        Curve = settings.CurveName,
        CurveSettings = JsonElement.Parse(settings.CurveJson),
        Policy = settings.PolicyName,
        PolicySettings = JsonElement.Parse(settings.PolicyJson),
        Version = settings.Version,
    };

    /// <summary>The recording that it speaks of.</summary>
    public RecordingHeader Header() =>
        new(Source, new SampleRate(SampleRateHz), WireNames.ColumnsOf(Columns), FullScale, Start);
}
