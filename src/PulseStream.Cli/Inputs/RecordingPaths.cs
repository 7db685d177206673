using PulseStream.Archive;
using PulseStream.Samples;
using PulseStream.Sources;
using PulseStream.Sources.Csv;
using PulseStream.Sources.Signals;

namespace PulseStream.Cli.Inputs;

/// <summary>What people name as recordings: files, session folders, folders of sessions, standard input.</summary>
internal static class RecordingPaths
{
    public const string StandardInput = "-";

    private const string SessionFile = "session.json";
    private const string SessionKey = "session=";

    // ARCHIVE/person=ID/date=DAY/session=ID
    private const int ArchiveDepth = 3;

    /// <summary>The recordings that a path stands for: itself, or every session below a folder, in order.</summary>
    /// <exception cref="BadInputException">A folder without a session.</exception>
    public static IReadOnlyList<string> Expand(string path, Action<string> say)
    {
        if (!Directory.Exists(path))
        {
            return [path];
        }

        CompleteWhatWasCutOff(path, say);
        if (SessionArchive.IsSession(path))
        {
            return [path];
        }

        var sessions = SessionsBelow(path);
        return sessions.Length > 0
            ? sessions
            : throw new BadInputException(path, "expected a recording or a folder with archived sessions, found a folder without any", "Name a recording in it and run again");
    }

    /// <summary>Opens one of the paths that <see cref="Expand"/> gave.</summary>
    /// <exception cref="BadInputException">It cannot be used.</exception>
    public static OpenedRecording Open(string path, Stream input, CsvOptions options, SignalMap map, CancellationToken cancel)
    {
        if (path == StandardInput)
        {
            return new OpenedRecording(CsvRecording.Open(input, path, options with { Map = map }, cancel), Session: null, IsLive: true);
        }

        if (Directory.Exists(path) || IsFileOfSession(path))
        {
            var session = ArchivedSession.Open(path);
            return new OpenedRecording(session.OpenRecording(), session, IsLive: false);
        }

        return new OpenedRecording(IsParquet(path) ? ParquetRecording.Open(path, options) : RecordingFile.Open(path, options, map, cancel), Session: null, IsLive: false);
    }

    private static bool IsFileOfSession(string path) => File.Exists(path)
        && (IsParquet(path) ? SessionArchive.IsSession(Path.GetDirectoryName(Path.GetFullPath(path))!) : Path.GetFileName(path) == SessionFile);

    private static bool IsParquet(string path) => path.EndsWith(".parquet", StringComparison.OrdinalIgnoreCase);

    private static void CompleteWhatWasCutOff(string folder, Action<string> say)
    {
        var root = Path.GetFullPath(folder);
        if (Path.GetFileName(root.TrimEnd(Path.DirectorySeparatorChar)).StartsWith(SessionKey, StringComparison.Ordinal))
        {
            for (var i = 0; i < ArchiveDepth; i++)
            {
                root = Path.GetDirectoryName(root) ?? root;
            }
        }

        ArchiveRecovery.RecoverAll(root, say);
    }

    private static string[] SessionsBelow(string folder)
    {
        try
        {
            return
            [
                .. Directory.EnumerateFiles(folder, SessionFile, SearchOption.AllDirectories)
                    .Select(file => Path.GetDirectoryName(file)!)
                    .Order(StringComparer.Ordinal),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException(folder, $"it could not be searched ({e.Message.TrimEnd('.')})", "Allow reading it and run again", e);
        }
    }
}
