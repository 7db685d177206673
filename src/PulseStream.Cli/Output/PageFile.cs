using PulseStream.Samples;

namespace PulseStream.Cli.Output;

/// <summary>Writes a page or a picture; the file has its name only once it is whole.</summary>
internal static class PageFile
{
    private const string Unfinished = ".part";

    public static void Write(string path, string html) => Write(path, System.Text.Encoding.UTF8.GetBytes(html));

    /// <exception cref="BadInputException">It could not be written.</exception>
    public static void Write(string path, byte[] bytes)
    {
        try
        {
            File.WriteAllBytes(path + Unfinished, bytes);
            File.Move(path + Unfinished, path, overwrite: true);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new BadInputException(path, $"it could not be written ({e.Message.TrimEnd('.')})", "Give another place, or free space and rights", e);
        }
    }
}
