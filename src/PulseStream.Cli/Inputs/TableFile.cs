using PulseStream.Samples;

namespace PulseStream.Cli.Inputs;

/// <summary>Reads a table that an argument names, or standard input.</summary>
internal static class TableFile
{
    // A year of one value a second fits; beyond it memory would be asked for blindly.
    private const long LongestBytes = 1024L * 1024 * 1024;

    public static ReadOnlyMemory<byte> Read(string path, Stream input)
    {
        try
        {
            if (path == RecordingPaths.StandardInput)
            {
                using var all = new MemoryStream();
                input.CopyTo(all);
                return all.ToArray();
            }

            return Directory.Exists(path) ? throw new BadInputException(path, "expected a file and found a folder", "Name a file in it and run again")
                : new FileInfo(path) is { Exists: true, Length: > LongestBytes } ? throw new BadInputException(path, $"expected a file of {LongestBytes} bytes at most, found a larger one", "Check the path and run again")
                : File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BadInputException(path, "there is no such file", "Check the path and run again", e);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException(path, $"it could not be read ({e.Message.TrimEnd('.')})", "Check the path and run again", e);
        }
    }
}
