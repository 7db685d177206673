namespace PulseStream.Archive;

/// <summary>Where an archive keeps what a replay of it has finished so far. Nothing there is a session: it may go at any time.</summary>
public static class UnfinishedReplay
{
    private const string Prefix = ".unfinished-replay-";

    /// <summary>The file of one replay.</summary>
    /// <param name="archiveFolder">The archive.</param>
    /// <param name="program">What tells this build of the program from others.</param>
    /// <param name="order">What tells this replay from others of the same build.</param>
    public static string PathOf(string archiveFolder, string program, string order) =>
        Path.Combine(archiveFolder, $"{Prefix}{program}-{order}");

    /// <summary>Files of replays that no build but others could go on with.</summary>
    /// <param name="archiveFolder">The archive.</param>
    /// <param name="program">What tells this build of the program from others.</param>
    public static IReadOnlyList<string> OfOtherPrograms(string archiveFolder, string program) =>
        [.. All(archiveFolder).Where(path => !Path.GetFileName(path).StartsWith($"{Prefix}{program}-", StringComparison.Ordinal))];

    /// <summary>Files of all replays.</summary>
    /// <param name="archiveFolder">The archive.</param>
    public static IReadOnlyList<string> All(string archiveFolder) => Directory.Exists(archiveFolder) ? Directory.GetFiles(archiveFolder, Prefix + "*") : [];
}
