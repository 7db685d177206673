using PulseStream.Archive;
using PulseStream.Comparison;
using PulseStream.Samples;

namespace PulseStream.Cli.Inputs;

/// <summary>What people name as the results of a run: an archive, a session's folder, a file of results, a folder of them.</summary>
internal static class ResultSets
{
    private const string ResultFiles = "*.ndjson";

    /// <summary>The recordings of a run; what cannot be read of one is told in its place.</summary>
    /// <exception cref="BadInputException">There is nothing to compare.</exception>
    public static IReadOnlyList<ListedRecording> Of(string path, Action<string> say)
    {
        if (!Directory.Exists(path))
        {
            return [.. ResultLines.Read(path).Select(results => new ListedResults(results))];
        }

        var files = Directory.GetFiles(path, ResultFiles).Order(StringComparer.Ordinal).ToArray();
        if (files.Length > 0 && !SessionArchive.IsSession(path) && SessionArchive.Sessions(path).Count == 0)
        {
            return [.. files.SelectMany(ResultLines.Read).Select(results => new ListedResults(results))];
        }

        return [.. RecordingPaths.Expand(path, say).Select(folder => new ListedSession(folder))];
    }
}
