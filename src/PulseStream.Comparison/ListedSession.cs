namespace PulseStream.Comparison;

/// <summary>A session of an archive. Its folder is all that is kept of it.</summary>
/// <param name="folder">The session's folder.</param>
public sealed class ListedSession(string folder) : ListedRecording
{
    /// <inheritdoc />
    public override string Session => ArchivedResults.IdentityOf(folder);

    /// <inheritdoc />
    public override string Source => ArchivedResults.SourceOf(folder);

    /// <inheritdoc />
    public override RecordingResults Read() => ArchivedResults.Read(folder);
}
