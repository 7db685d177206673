namespace PulseStream.Page.Web;

/// <summary>A past session as the page lists it.</summary>
/// <param name="Key">By which its picture is asked for.</param>
/// <param name="Person">Pseudonym; null where none was told.</param>
/// <param name="Start">When it began; null where not known.</param>
/// <param name="Name">Its name.</param>
/// <param name="Seconds">Seconds judged.</param>
/// <param name="Readings">Readings accepted.</param>
internal sealed record PastSession(string Key, string? Person, DateTimeOffset? Start, string Name, long Seconds, long Readings);
