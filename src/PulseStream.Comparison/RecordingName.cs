namespace PulseStream.Comparison;

/// <summary>How recordings of two runs are recognised as the same.</summary>
public static class RecordingName
{
    private const string SessionKey = "session=";

    // Runs over the same recording in two formats are compared as one: only what follows the name differs.
    private static readonly string[] Endings = [".csv", ".edf", ".hea", ".dat", ".parquet", ".ndjson"];

    /// <summary>The name of a file or a session without its folder.</summary>
    /// <param name="source">As a run named it, with slashes of either system.</param>
    public static string Of(string source)
    {
        ArgumentNullException.ThrowIfNull(source);
        var trimmed = source.TrimEnd('/', '\\');
        var name = trimmed[(trimmed.LastIndexOfAny(['/', '\\']) + 1)..];
        return name.StartsWith(SessionKey, StringComparison.Ordinal) ? name[SessionKey.Length..] : name;
    }

    /// <summary>What two names of the same recording share: the name without the ending of a recording's format.</summary>
    /// <param name="source">As a run named it.</param>
    public static string KeyOf(string source)
    {
        var name = Of(source);
        var ending = Array.Find(Endings, known => name.EndsWith(known, StringComparison.OrdinalIgnoreCase));
        return ending is null ? name : name[..^ending.Length];
    }
}
