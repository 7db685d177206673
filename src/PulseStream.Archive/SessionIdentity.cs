using System.Text;
using PulseStream.Samples;

namespace PulseStream.Archive;

/// <summary>Whose session it is and where it was taken, in pseudonyms alone.</summary>
/// <param name="Session">Name of the session; the same in every replay of a recording.</param>
/// <param name="Person">The person; null where none is told.</param>
/// <param name="Sensor">The sensor; null where not told.</param>
/// <param name="Site">Where on the body, "index-left"; null where not told.</param>
/// <exception cref="BadInputException">One of them is no <see cref="Pseudonym"/>.</exception>
public sealed record SessionIdentity(string Session, string? Person = null, string? Sensor = null, string? Site = null)
{
    /// <summary>The activity of a check after a minute of standing up and sitting down.</summary>
    public const string Exertion = "exertion";

    // Leaves room in a pseudonym for the start (16 characters).
    private const int LongestStem = 40;

    /// <summary>Name of the session.</summary>
    public string Session { get; } = Pseudonym.Checked("session", Session);

    /// <summary>The person; null where none is told.</summary>
    public string? Person { get; } = Person is null ? null : Pseudonym.Checked("person", Person);

    /// <summary>The sensor; null where not told.</summary>
    public string? Sensor { get; } = Sensor is null ? null : Pseudonym.Checked("sensor", Sensor);

    /// <summary>Where on the body; null where not told.</summary>
    public string? Site { get; } = Site is null ? null : Pseudonym.Checked("site", Site);

    /// <summary>What the person had just done, <see cref="Exertion"/>; null where not told, which is rest.</summary>
    public string? Activity { get; init; }

    /// <summary>
    /// A session name made of the source's file name and the start, in UTC, where known: "night-20260301T060000Z". Says
    /// the same for the same recording.
    /// </summary>
    /// <param name="header">The recording.</param>
    public static string SessionNameOf(RecordingHeader header)
    {
        var stem = new StringBuilder();
        foreach (var letter in Path.GetFileNameWithoutExtension(header.Source).Take(LongestStem))
        {
            stem.Append(char.IsAsciiLetterOrDigit(letter) || letter is '-' or '_' ? letter : '-');
        }

        var name = stem.ToString().Trim('-');
        name = name.Length == 0 ? "recording" : name;
        return header.Start is { } start ? $"{name}-{start.UtcDateTime:yyyyMMdd'T'HHmmss'Z'}" : name;
    }
}
