namespace PulseStream.Tests.Archive;

/// <summary>An empty folder that goes away with the test.</summary>
internal sealed class TemporaryArchive : IDisposable
{
    public string Folder { get; } = Directory.CreateTempSubdirectory("pulsestream-archive-").FullName;

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
