namespace PulseStream.Cli.Inputs;

/// <summary>Goes through thousands of session folders.</summary>
internal static class ManyFolders
{
    // In parallel, for small files wait for the disk more than for the processor; so many at once that memory does not grow with
    // the archive, which it does where one half is read ahead while the other is shown.
    private const int AtOnce = 256;

    /// <summary>What is read of each folder, in the order of the folders.</summary>
    public static IEnumerable<T> Read<T>(IReadOnlyList<string> folders, Func<string, T> read, CancellationToken cancel) =>
        folders.Chunk(AtOnce).SelectMany(some => some.AsParallel().AsOrdered().WithCancellation(cancel).Select(read));
}
