using Microsoft.Win32.SafeHandles;

namespace PulseStream.Cli;

/// <summary>Standard output as a stream that says when nobody reads it any more: the console's own hides that.</summary>
internal static class StandardOutput
{
    private const int Handle = 1;

    public static Stream Open() => OperatingSystem.IsWindows() ? Console.OpenStandardOutput() : PipeOrConsole();

    private static Stream PipeOrConsole()
    {
        try
        {
            var stream = new FileStream(new SafeFileHandle(Handle, ownsHandle: false), FileAccess.Write, bufferSize: 0);

            // In a file others write to as well, such as both outputs in one, this stream would keep a place of its own.
            return stream.CanSeek ? Console.OpenStandardOutput() : stream;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // Started with standard output closed: there is nobody to tell results to.
            return Stream.Null;
        }
    }
}
