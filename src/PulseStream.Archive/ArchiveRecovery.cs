using System.Text.Json;
using PulseStream.Archive.Journaling;
using PulseStream.Archive.Sealing;
using PulseStream.Samples;

namespace PulseStream.Archive;

/// <summary>Completes sessions that a kill or a power cut left as a journal. Every command that opens an archive begins with it.</summary>
public static class ArchiveRecovery
{
    internal const string TallyKey = "tally";

    /// <summary>
    /// Seals what was cut off with what its journal holds, and clears what a cut while sealing left behind. Journals of
    /// sessions that still run are left alone; so is one that cannot be read, with a sentence. Doing it twice is doing it once.
    /// </summary>
    /// <param name="archiveFolder">The archive; nothing happens where it does not exist.</param>
    /// <param name="say">Hears one sentence for each session completed or left alone for a fault.</param>
    public static void RecoverAll(string archiveFolder, Action<string> say) => Recover(SessionArchive.Folders(archiveFolder), say);

    /// <summary>The same for the sessions of one person alone.</summary>
    /// <param name="archiveFolder">The archive; nothing happens where it does not exist.</param>
    /// <param name="person">The person's pseudonym.</param>
    /// <param name="say">Hears one sentence for each session completed or left alone for a fault.</param>
    public static void RecoverPerson(string archiveFolder, string person, Action<string> say) =>
        Recover(SessionArchive.DaysOf(archiveFolder, Pseudonym.Checked("person", person)).SelectMany(day => SessionArchive.Below(day, WireNames.SessionKey)), say);

    private static void Recover(IEnumerable<string> folders, Action<string> say)
    {
        foreach (var folder in folders.ToList())
        {
            try
            {
                Recover(folder, say);
            }
            catch (BadInputException e)
            {
                say($"A session that was cut off stays as it is. {e.Message}");
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                say($"A session that was cut off stays as it is. {SessionArchive.NotWritable(folder, e).Message}");
            }
            catch (Exception e) when (e is JsonException or ArgumentException or OverflowException)
            {
                say($"A session that was cut off stays as it is. {Damaged(folder, e).Message}");
            }
        }
    }

    private static void Recover(string folder, Action<string> say)
    {
        var path = Path.Combine(folder, WireNames.JournalFile);
        if (!File.Exists(path))
        {
            // A cut may have left the log; in a folder without session.json it may be that of a session which begins just now.
            if (File.Exists(Path.Combine(folder, WireNames.SessionFile)))
            {
                Journal.Remove(path);
            }

            return;
        }

        using (var journal = Journal.TryOpen(path, JournalPace.Live))
        {
            if (journal is null)
            {
                return;
            }

            if (journal.Begun is null)
            {
                // Killed before its first word, or about to speak it: whoever finds its journal gone begins again.
                File.Delete(path);
            }
            else
            {
                Complete(folder, journal, say);
            }
        }

        Journal.Remove(path);
        if (!Directory.EnumerateFileSystemEntries(folder).Any())
        {
            Directory.Delete(folder);
        }
    }

    private static void Complete(string folder, Journal journal, Action<string> say)
    {
        if (IsWhole(folder))
        {
            return;
        }

        SessionSealer.Seal(folder, journal, TallyOf(journal));
        say($"{folder}: a session that was cut off has been completed from its journal.");
    }

    // SQLite notices torn pages, not a changed byte within a value.
    private static BadInputException Damaged(string folder, Exception e) => new(
        Path.Combine(folder, WireNames.JournalFile),
        $"expected a journal whose values can be read, found otherwise ({e.Message.TrimEnd('.')})",
        "Move the session's folder out of the archive",
        e);

    private static SampleTally? TallyOf(Journal journal) =>
        journal.State(TallyKey) is { } text && JsonSerializer.Deserialize(text, TallyJson.Default.Int64Array) is [var samples, var missing, var refused, var repeats]
            ? new(samples, missing, refused, repeats)
            : null;

    // With a journal still there, the cut came after session.json; the files are believed only if they are what it says.
    private static bool IsWhole(string folder)
    {
        try
        {
            ArchivedSession.Open(folder).Verify();
            return true;
        }
        catch (BadInputException)
        {
            return false;
        }
    }
}
