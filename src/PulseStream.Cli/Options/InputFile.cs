using PulseStream.Samples;

namespace PulseStream.Cli.Options;

/// <summary>Reads a small file that an option names.</summary>
internal static class InputFile
{
    // A policy has two kilobytes. Whatever is larger than this is something else.
    private const int LongestBytes = 1024 * 1024;

    public static ReadOnlyMemory<byte> Read(string path)
    {
        try
        {
            using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            var bytes = new byte[LongestBytes + 1];
            var count = stream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
            return count <= LongestBytes
                ? bytes.AsMemory(0, count)
                : throw new BadInputException(path, $"expected a file of {LongestBytes} bytes at most, found a larger one", "Check the path and run again");
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
