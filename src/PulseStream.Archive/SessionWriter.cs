using System.Text.Json;
using PulseStream.Archive.Journaling;
using PulseStream.Archive.Results;
using PulseStream.Archive.Sealing;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Archive;

/// <summary>
/// Keeps a running session: everything goes into a journal at once and into the session's files at the end. Whoever
/// completes or cancels a session seals it; one that is disposed unsealed was cut off, and its journal waits for
/// <see cref="ArchiveRecovery"/>.
/// </summary>
public sealed class SessionWriter : IDisposable
{
    // A minute: little is read again after a kill, and a commit's price no longer shows.
    private const int ReplaySecondsPerCommit = 60;

    // Rows of the journal's sample table; larger ones win no more speed.
    private const int LongestChunk = 8192;

    private readonly RecordingHeader header;
    private readonly Journal journal;
    private readonly IReadOnlyList<int> channels;
    private readonly Sample[] pending = new Sample[LongestChunk];
    private readonly long samplesPerCommit;
    private int pendingCount;
    private long nextIndex;
    private long committedIndex;

    private SessionWriter(string folder, Journal journal, SessionDocument begun, RecordingHeader header, JournalPace pace)
    {
        Folder = folder;
        this.journal = journal;
        this.header = header;
        channels = SessionSealer.ChannelsOf(begun);
        Pace = pace;
        samplesPerCommit = header.Rate.FirstIndexOf(pace == JournalPace.Live ? 1 : ReplaySecondsPerCommit);
    }

    /// <summary>The session's folder.</summary>
    public string Folder { get; }

    /// <summary>How often its journal is secured.</summary>
    public JournalPace Pace { get; }

    /// <summary>
    /// Begins a session. Nothing is ever replaced: where a session of that name is there already, sealed, cut off or
    /// running, the new one is called NAME-2, NAME-3 and so on.
    /// </summary>
    /// <param name="archiveFolder">Made where it does not exist.</param>
    /// <param name="identity">Whose session.</param>
    /// <param name="header">The recording.</param>
    /// <param name="settings">How it is judged.</param>
    /// <param name="pace">How often the journal is secured.</param>
    /// <exception cref="BadInputException">The archive cannot be written.</exception>
    /// <exception cref="JsonException">The curve's or the policy's text is no JSON.</exception>
    public static SessionWriter Create(string archiveFolder, SessionIdentity identity, RecordingHeader header, SessionSettings settings, JournalPace pace)
    {
        var day = SessionArchive.DayOf(archiveFolder, identity, header);
        var begun = SessionDocument.Of(identity, header, settings);
        for (var turn = 1; ; turn++)
        {
            var name = turn == 1 ? identity.Session : Suffixed(identity.Session, turn);
            var folder = Path.Combine(day, WireNames.SessionKey + name);
            if (TryBegin(folder, pace) is { } journal)
            {
                begun = begun with { Session = name };
                journal.Begin(SessionDocumentFile.TextOf(begun));
                return new(folder, journal, begun, header, pace);
            }
        }
    }

    /// <summary>Keeps samples.</summary>
    /// <param name="block">Later ones than before.</param>
    /// <exception cref="ArgumentOutOfRangeException">The block starts before the end of the one before.</exception>
    /// <exception cref="BadInputException">The journal cannot be written.</exception>
    public void Append(SampleBlock block)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(block.FirstIndex, nextIndex);
        if (block.FirstIndex != nextIndex)
        {
            WritePending();
            nextIndex = block.FirstIndex;
        }

        for (var rest = block.Samples.Span; rest.Length > 0;)
        {
            var part = rest[..Math.Min(rest.Length, LongestChunk - pendingCount)];
            part.CopyTo(pending.AsSpan(pendingCount));
            pendingCount += part.Length;
            nextIndex += part.Length;
            rest = rest[part.Length..];
            WriteWhatIsDue();
        }
    }

    /// <summary>Keeps a second.</summary>
    /// <param name="second">The next one.</param>
    /// <exception cref="BadInputException">The journal cannot be written.</exception>
    public void Append(Second second) => journal.Append(SecondRows.Table, SecondRows.Of(second));

    /// <summary>Keeps a beat.</summary>
    /// <param name="beat">The next one.</param>
    /// <exception cref="BadInputException">The journal cannot be written.</exception>
    public void Append(in Beat beat) => journal.Append(BeatRows.Table, BeatRows.Of(in beat, header.Rate));

    /// <summary>Keeps a reading.</summary>
    /// <param name="reading">The next one.</param>
    /// <exception cref="BadInputException">The journal cannot be written.</exception>
    public void Append(Reading reading) => journal.Append(ReadingRows.Table, ReadingRows.Of(reading));

    /// <summary>Keeps a sitting.</summary>
    /// <param name="sitting">The next one.</param>
    /// <exception cref="BadInputException">The journal cannot be written.</exception>
    public void Append(Sitting sitting) => journal.Append(SittingRows.Table, SittingRows.Of(sitting));

    /// <summary>Keeps an advice.</summary>
    /// <param name="advice">The next one.</param>
    /// <exception cref="BadInputException">The journal cannot be written.</exception>
    public void Append(ArchivedAdvice advice) => journal.Append(AdviceRows.Table, AdviceRows.Of(advice));

    /// <summary>Secures everything appended so far; also done by itself at the journal's pace.</summary>
    /// <exception cref="BadInputException">The journal cannot be written.</exception>
    public void Flush()
    {
        WritePending();
        journal.Commit();
        committedIndex = nextIndex;
    }

    /// <summary>Ends the session: its files are written and verified, then the journal is removed. Call once, nothing after it.</summary>
    /// <param name="tally">What the source has counted.</param>
    /// <param name="isCancelled">Whether it ended before the recording did.</param>
    /// <exception cref="BadInputException">The archive cannot be written; the journal stays for recovery.</exception>
    public void Seal(SampleTally tally, bool isCancelled = false)
    {
        Flush();

        // A cut while sealing must not cost the counts.
        journal.SetState(ArchiveRecovery.TallyKey, JsonSerializer.Serialize([tally.Samples, tally.Missing, tally.RefusedRows, tally.Repeats], TallyJson.Default.Int64Array));
        SessionSealer.Seal(Folder, journal, tally, isCancelled);
        journal.Dispose();
        Journal.Remove(Path.Combine(Folder, WireNames.JournalFile));
    }

    /// <summary>Takes the session out of the archive, where its recording as a whole is refused. Call once, nothing after it.</summary>
    /// <exception cref="BadInputException">The archive cannot be written.</exception>
    public void Discard()
    {
        journal.Dispose();
        try
        {
            Directory.Delete(Folder, recursive: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw SessionArchive.NotWritable(Folder, e);
        }
    }

    /// <summary>Lets the journal go. What was appended and not flushed is lost unless the session was sealed.</summary>
    public void Dispose() => journal.Dispose();

    private static string Suffixed(string session, int turn)
    {
        var suffix = $"-{turn}";
        return session[..Math.Min(session.Length, Pseudonym.Longest - suffix.Length)] + suffix;
    }

    // The folder is taken by whoever creates the journal's file: the file system lets only one do so.
    private static Journal? TryBegin(string folder, JournalPace pace)
    {
        var path = Path.Combine(folder, WireNames.JournalFile);
        try
        {
            if (Directory.Exists(folder))
            {
                return null;
            }

            Directory.CreateDirectory(folder);
            new FileStream(path, FileMode.CreateNew).Dispose();
        }
        catch (IOException) when (File.Exists(path))
        {
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw SessionArchive.NotWritable(folder, e);
        }

        return Journal.TryOpen(path, pace);
    }

    private void WriteWhatIsDue()
    {
        if (nextIndex - committedIndex >= samplesPerCommit)
        {
            Flush();
        }
        else if (pendingCount == LongestChunk)
        {
            WritePending();
        }
    }

    private void WritePending()
    {
        if (pendingCount > 0)
        {
            journal.Append(SampleChunk.Of(nextIndex - pendingCount, pending.AsSpan(0, pendingCount), channels));
            pendingCount = 0;
        }
    }
}
