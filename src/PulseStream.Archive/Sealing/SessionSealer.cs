using System.Security.Cryptography;
using PulseStream.Archive.Columns;
using PulseStream.Archive.Journaling;
using PulseStream.Archive.Results;
using PulseStream.Samples;

namespace PulseStream.Archive.Sealing;

/// <summary>
/// Turns a journal into the session's files. Each is written beside its place, read back, and moved there once the disk
/// has it; session.json comes last, so a folder without it is not whole; the journal outlives them all. Cut off
/// anywhere, it starts again from the journal.
/// </summary>
internal static class SessionSealer
{
    /// <summary>Seals a session. The journal stays.</summary>
    /// <param name="folder">The session's folder.</param>
    /// <param name="journal">Its journal, held and committed.</param>
    /// <param name="tally">What the source has counted; null where the session was cut off.</param>
    /// <param name="isCancelled">Whether it ended before the recording did.</param>
    public static void Seal(string folder, Journal journal, SampleTally? tally, bool isCancelled = false)
    {
        var begun = SessionDocumentFile.Parse(journal.Begun!);
        var origin = new ResultOrigin(begun.Start, begun.Version, begun.CurveHash);
        var files = new SortedDictionary<string, StoredFile>(StringComparer.Ordinal);
        var (samples, end) = (0L, 0L);
        var usableSeconds = 0L;
        var channels = ChannelsOf(begun);
        files[WireNames.SamplesFile] = Stored(folder, WireNames.SamplesFile, path =>
        {
            (samples, end) = SampleFile.Write(path, journal, channels);
            return samples;
        });
        foreach (var table in ResultTable.All)
        {
            files[table.FileName] = Stored(folder, table.FileName, path => ResultFile.Write(path, table, RowsOf(table), origin));
        }

        var counts = new SessionCounts(
            samples,
            tally?.Missing ?? (end - samples),
            tally?.RefusedRows,
            tally?.Repeats,
            files[SecondRows.Table.FileName].Rows,
            usableSeconds,
            files[ReadingRows.Table.FileName].Rows);
        var outline = OutlineDocument.Of(OutlineDocument.Files.Sum(name => files[name].Rows), table => journal.Rows(table));
        InPlace(folder, WireNames.SessionFile, path => SessionDocumentFile.Write(path, begun with { Outline = outline, Recovered = tally is null, Cancelled = isCancelled, ArrivalRateHz = tally?.ArrivalRateHz, Counts = counts, Files = files }));

        IEnumerable<Cell[]> RowsOf(ResultTable table) => table == SecondRows.Table
            ? journal.Rows(table).Select(row =>
            {
                usableSeconds += SecondRows.IsUsable(row) ? 1 : 0;
                return row;
            })
            : journal.Rows(table);
    }

    /// <summary>Says whether a file is what session.json says.</summary>
    /// <param name="path">The file.</param>
    /// <param name="stored">What session.json says; null where it does not know the file.</param>
    /// <exception cref="BadInputException">It is not.</exception>
    public static void Verify(string path, StoredFile? stored)
    {
        if (stored is null || !File.Exists(path))
        {
            throw ColumnFile.Damaged(path, "expected a file that session.json tells of, found none");
        }

        if (!string.Equals(HashOf(path), stored.Sha256, StringComparison.Ordinal))
        {
            throw ColumnFile.Damaged(path, "the file is not what was written: its SHA-256 differs from the one in session.json");
        }
    }

    /// <summary>Channels that a session's recording has.</summary>
    /// <param name="document">The session.</param>
    public static IReadOnlyList<int> ChannelsOf(SessionDocument document) =>
        [.. Enumerable.Range(0, WireNames.Channels.Count).Where(c => document.Columns.Contains(WireNames.Channels[c].Name, StringComparer.Ordinal))];

    private static StoredFile Stored(string folder, string name, Func<string, long> write)
    {
        var stored = new StoredFile(0, 0, string.Empty);
        InPlace(folder, name, path =>
        {
            var rows = write(path);
            ReadBack(path);
            stored = new(rows, new FileInfo(path).Length, HashOf(path));
        });
        return stored;
    }

    private static void InPlace(string folder, string name, Action<string> write)
    {
        var place = Path.Combine(folder, name);
        try
        {
            write(place + WireNames.UnfinishedSuffix);
            File.Move(place + WireNames.UnfinishedSuffix, place, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw SessionArchive.NotWritable(place, e);
        }
    }

    // The hashes were taken of the values handed in: reading them back compares the file with those, not with itself.
    private static void ReadBack(string path)
    {
        using var reader = new ColumnFileReader(path);
        var columns = reader.NewColumns();
        for (var group = 0; group < reader.GroupCount; group++)
        {
            reader.ReadGroup(group, columns);
        }
    }

    private static string HashOf(string path)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            return Convert.ToHexStringLower(SHA256.HashData(stream));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw ColumnFile.Damaged(path, $"expected a file that can be read, found otherwise ({e.Message.TrimEnd('.')})", e);
        }
    }
}
