using PulseStream.Archive;
using PulseStream.Sources;

namespace PulseStream.Cli.Inputs;

/// <summary>A recording that is open, with what is known of where it comes from.</summary>
/// <param name="Recording">Ready to be read once.</param>
/// <param name="Session">The session whose samples it has; null where it comes from a file or a stream.</param>
/// <param name="IsLive">Whether its samples may exist nowhere else.</param>
internal sealed record OpenedRecording(Recording Recording, ArchivedSession? Session, bool IsLive) : IDisposable
{
    public void Dispose() => Recording.Dispose();
}
