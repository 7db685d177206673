using PulseStream.Readings;

namespace PulseStream.Fhir;

/// <summary>What a session found, ready to be told to a clinic's system.</summary>
/// <param name="Session">Name of the session.</param>
/// <param name="Person">The person's pseudonym; null where not told.</param>
/// <param name="Start">The instant of second 0 with its local offset.</param>
/// <param name="Program">Name and version of the program that found it.</param>
/// <param name="Readings">Accepted readings.</param>
/// <param name="Sittings">Sittings; those without a reading become observations without a value.</param>
public sealed record MeasuredSession(
    string Session,
    string? Person,
    DateTimeOffset Start,
    string Program,
    IReadOnlyList<Reading> Readings,
    IReadOnlyList<Sitting> Sittings);
