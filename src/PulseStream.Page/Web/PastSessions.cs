using PulseStream.Archive;
using PulseStream.Plots;
using PulseStream.Samples;

namespace PulseStream.Page.Web;

/// <summary>Sessions of the archive, newest first, and their pictures.</summary>
/// <param name="archive">The archive; null where none is kept.</param>
/// <param name="person">Whose sessions are shown; null for those of everybody.</param>
internal sealed class PastSessions(string? archive, string? person) : IDisposable
{
    // A list that somebody at a bedside can still look through.
    private const int Longest = 40;

    // Drawing takes a core for a second: one at a time leaves the others to the measurement.
    private readonly SemaphoreSlim _drawing = new(1);

    /// <summary>What the page lists.</summary>
    public IReadOnlyList<PastSession> List() => [.. Folders().Select(PastOf).OfType<PastSession>()];

    /// <summary>The picture of a session as PNG; null where there is no such session or it cannot be drawn.</summary>
    public async Task<byte[]?> PictureOf(string key, CancellationToken cancel)
    {
        // Only what is listed is opened, whatever was asked for.
        if (Folders().FirstOrDefault(folder => string.Equals(KeyOf(folder), key, StringComparison.Ordinal)) is not { } found)
        {
            return null;
        }

        await _drawing.WaitAsync(cancel);
        try
        {
            using var png = new MemoryStream();
            SessionPicture.Draw(found, png);
            return png.ToArray();
        }
        catch (BadInputException)
        {
            return null;
        }
        finally
        {
            _drawing.Release();
        }
    }

    public void Dispose() => _drawing.Dispose();

    private IEnumerable<string> Folders() => archive is null
        ? []
        : SessionArchive.Sessions(archive)
            .Where(folder => person is null || string.Equals(PersonOf(folder), "person=" + person, StringComparison.Ordinal))
            .OrderByDescending(folder => Path.GetFileName(Path.GetDirectoryName(folder)), StringComparer.Ordinal)
            .ThenByDescending(folder => Path.GetFileName(folder), StringComparer.Ordinal)
            .Take(Longest);

    private static string? PersonOf(string folder) => Path.GetFileName(Path.GetDirectoryName(Path.GetDirectoryName(folder)));

    private string KeyOf(string folder) => Path.GetRelativePath(archive!, folder).Replace(Path.DirectorySeparatorChar, '/');

    private PastSession? PastOf(string folder)
    {
        try
        {
            var session = ArchivedSession.Open(folder);
            return new PastSession(
                KeyOf(folder), session.Identity.Person, session.Header.Start, session.Identity.Session, session.Counts.Seconds, session.Counts.Readings);
        }
        catch (BadInputException)
        {
            // One damaged session must not hide the others; `report` says what is wrong with it.
            return null;
        }
    }
}
