using PulseStream.Archive;
using PulseStream.Comparison;
using PulseStream.Samples;

namespace PulseStream.Cli.Inputs;

/// <summary>What people name as the results of a run: an archive, a session's folder, a file of results, a folder of them.</summary>
internal static class ResultSets
{
    private const string ResultFiles = "*.ndjson";

    /// <summary>The results of a run; what cannot be read of it is told in its place.</summary>
    /// <exception cref="BadInputException">There is nothing to compare.</exception>
    public static IReadOnlyList<RecordingResults> Read(string path, Action<string> say)
    {
        if (!Directory.Exists(path))
        {
            return ResultLines.Read(path);
        }

        var files = Directory.GetFiles(path, ResultFiles).Order(StringComparer.Ordinal).ToArray();
        if (files.Length > 0 && !SessionArchive.IsSession(path) && SessionArchive.Sessions(path).Count == 0)
        {
            return [.. files.SelectMany(ResultLines.Read)];
        }

        return [.. ManyFolders.Read(RecordingPaths.Expand(path, say), ArchivedResults.Read, CancellationToken.None)];
    }
}
