using PulseStream.Samples;

namespace PulseStream.Cli.Output;

/// <summary>Writes a result that an option names: whole or not at all.</summary>
internal static class WrittenFile
{
    private const string Unfinished = ".part";

    /// <summary>Writes a file in place of any of that name; its folder is made where it is missing.</summary>
    /// <param name="path">Where.</param>
    /// <param name="bytes">What.</param>
    /// <exception cref="BadInputException">It cannot be written.</exception>
    public static void Write(string path, byte[] bytes)
    {
        try
        {
            if (Path.GetDirectoryName(Path.GetFullPath(path)) is { } folder)
            {
                Directory.CreateDirectory(folder);
            }

            File.WriteAllBytes(path + Unfinished, bytes);
            File.Move(path + Unfinished, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException(path, $"it could not be written ({e.Message.TrimEnd('.')})", "Give another place, or free space and rights", e);
        }
    }
}
