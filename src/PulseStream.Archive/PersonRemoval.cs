using PulseStream.Archive.Journaling;
using PulseStream.Samples;

namespace PulseStream.Archive;

/// <summary>What was removed of a person.</summary>
/// <param name="Sessions">Sessions, those that were cut off included.</param>
/// <param name="Days">Days, that without a date included.</param>
/// <param name="Files">Files, journals and what an unfinished replay of the archive has left included.</param>
/// <param name="Bytes">Their size.</param>
public sealed record PersonRemoval(int Sessions, int Days, int Files, long Bytes)
{
    /// <summary>Removes everything that an archive holds of a person: every day, session, file and journal, and whatever a replay that was interrupted has noted.</summary>
    /// <param name="archiveFolder">The archive.</param>
    /// <param name="person">Pseudonym.</param>
    /// <exception cref="BadInputException">Nothing is known of the person, a session still runs, or a file cannot be removed.</exception>
    public static PersonRemoval Remove(string archiveFolder, string person)
    {
        var folder = Path.Combine(archiveFolder, WireNames.PersonKey + Pseudonym.Checked("person", person));
        if (!Directory.Exists(folder))
        {
            throw new BadInputException(archiveFolder, $"expected sessions of person {person}, found none", "Check --archive and the pseudonym; nothing was removed");
        }

        var days = SessionArchive.DaysOf(archiveFolder, person).ToList();
        var sessions = days.SelectMany(day => SessionArchive.Below(day, WireNames.SessionKey)).ToList();
        if (sessions.Find(IsRunning) is { } running)
        {
            throw new BadInputException(running, "the session still runs", "End it and run again; nothing was removed");
        }

        // What a replay has finished so far may speak of the person too, and costs nothing but time to do again.
        FileInfo[] replays = [.. UnfinishedReplay.All(archiveFolder).Select(path => new FileInfo(path))];
        FileInfo[] files = [.. new DirectoryInfo(folder).GetFiles("*", SearchOption.AllDirectories), .. replays];
        var removed = new PersonRemoval(sessions.Count, days.Count, files.Length, files.Sum(file => file.Length));
        try
        {
            Array.ForEach(replays, replay => replay.Delete());
            Directory.Delete(folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(folder, $"not everything could be removed ({e.Message.TrimEnd('.')})", "Allow it and run again", e);
        }

        return removed;
    }

    private static bool IsRunning(string session)
    {
        var path = Path.Combine(session, WireNames.JournalFile);
        if (!File.Exists(path))
        {
            return false;
        }

        using var journal = Journal.TryOpen(path, JournalPace.Live);
        return journal is null;
    }
}
