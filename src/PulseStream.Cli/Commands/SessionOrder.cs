using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Readings;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Commands;

/// <summary>How a person wants a session judged and kept, whatever it comes from.</summary>
/// <param name="Archive">Where sessions are kept; null where they are not.</param>
/// <param name="Person">Pseudonym; null where not told.</param>
/// <param name="Sensor">Null where not told.</param>
/// <param name="Site">Null where not told.</param>
/// <param name="Curve">Null where not told: that of an archived session, or the default.</param>
/// <param name="Policy">Null where not told: that of an archived session, or the default.</param>
/// <param name="CircumstancesFor">The person and the device, given the curve.</param>
/// <param name="Previous">Earlier readings that were told.</param>
/// <param name="Say">Hears diagnostics.</param>
internal sealed record SessionOrder(
    string? Archive,
    string? Person,
    string? Sensor,
    string? Site,
    CalibrationCurve? Curve,
    TriagePolicy? Policy,
    Func<CalibrationCurve, Circumstances> CircumstancesFor,
    IReadOnlyList<EarlierReading> Previous,
    Action<string> Say)
{
    /// <summary>Hears of earlier sessions that cannot be read.</summary>
    public DamagedHistory DamagedHistory { get; } = new(Say);

    /// <summary>What the person had just done; null where not told.</summary>
    public string? Activity { get; init; }

    /// <summary>Whose session it becomes: what was told, else what an archived session says of itself.</summary>
    public SessionIdentity IdentityOf(string session, SessionIdentity? archived) =>
        new(session, Person ?? archived?.Person, Sensor ?? archived?.Sensor, Site ?? archived?.Site) { Activity = Activity ?? archived?.Activity };
}
