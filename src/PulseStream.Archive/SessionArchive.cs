using PulseStream.Samples;

namespace PulseStream.Archive;

/// <summary>Where sessions lie in an archive: ARCHIVE/person=ID/date=YYYY-MM-DD/session=ID.</summary>
public static class SessionArchive
{
    /// <summary>Makes sure, before anything else is done, that an archive can be written.</summary>
    /// <param name="archiveFolder">Made where it does not exist.</param>
    /// <exception cref="BadInputException">It cannot.</exception>
    public static void EnsureWritable(string archiveFolder)
    {
        var probe = Path.Combine(archiveFolder, ".writable" + WireNames.UnfinishedSuffix);
        try
        {
            Directory.CreateDirectory(archiveFolder);
            File.WriteAllBytes(probe, []);
            File.Delete(probe);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw NotWritable(archiveFolder, e);
        }
    }

    /// <summary>Whether a folder is a sealed session.</summary>
    /// <param name="folder">Any path.</param>
    public static bool IsSession(string folder) => File.Exists(Path.Combine(folder, WireNames.SessionFile));

    /// <summary>The folders of all sealed sessions, in the order of person, date and name.</summary>
    /// <param name="archiveFolder">The archive; empty where it does not exist.</param>
    public static IReadOnlyList<string> Sessions(string archiveFolder) => [.. Folders(archiveFolder).Where(IsSession)];

    /// <summary>The folders of one person's sealed sessions, in the order of date and name.</summary>
    /// <param name="archiveFolder">The archive; empty where it does not exist.</param>
    /// <param name="person">The person's pseudonym.</param>
    /// <exception cref="BadInputException">The pseudonym is none.</exception>
    public static IReadOnlyList<string> SessionsOf(string archiveFolder, string person) =>
    [
        .. DaysOf(archiveFolder, Pseudonym.Checked("person", person))
            .SelectMany(day => Below(day, WireNames.SessionKey))
            .Where(IsSession),
    ];

    /// <summary>Folders in which a session is or was to be, sealed or not, in order.</summary>
    /// <param name="archiveFolder">The archive.</param>
    internal static IEnumerable<string> Folders(string archiveFolder) =>
        Below(archiveFolder, WireNames.PersonKey)
            .SelectMany(person => Below(person, WireNames.DateKey))
            .SelectMany(date => Below(date, WireNames.SessionKey));

    /// <summary>Folders of one person's days, in order.</summary>
    /// <param name="archiveFolder">The archive.</param>
    /// <param name="person">The person's pseudonym.</param>
    internal static IEnumerable<string> DaysOf(string archiveFolder, string person) =>
        Below(Path.Combine(archiveFolder, WireNames.PersonKey + person), WireNames.DateKey);

    /// <summary>Folders whose name starts with a key.</summary>
    /// <param name="folder">Where to look.</param>
    /// <param name="key">With the equals sign.</param>
    internal static IEnumerable<string> Below(string folder, string key) => Directory.Exists(folder)
        ? Directory.EnumerateDirectories(folder, key + "*").Order(StringComparer.Ordinal)
        : [];

    /// <summary>Folder of a session's day.</summary>
    /// <param name="archiveFolder">The archive.</param>
    /// <param name="identity">Whose session.</param>
    /// <param name="header">The recording, whose local start gives the date.</param>
    internal static string DayOf(string archiveFolder, SessionIdentity identity, RecordingHeader header) => Path.Combine(
        archiveFolder,
        WireNames.PersonKey + (identity.Person ?? WireNames.NoPerson),
        WireNames.DateKey + (header.Start is { } start ? start.ToString("yyyy-MM-dd") : WireNames.NoDate));

    /// <summary>Says that a place cannot be written.</summary>
    /// <param name="path">The place.</param>
    /// <param name="e">What the system said.</param>
    internal static BadInputException NotWritable(string path, Exception e) =>
        new(path, $"expected an archive that can be written, found otherwise ({e.Message.TrimEnd('.')})", "Give another folder, or free space and rights", e);
}
