namespace PulseStream.Comparison;

/// <summary>A recording whose results are there already.</summary>
/// <param name="results">The results.</param>
public sealed class ListedResults(RecordingResults results) : ListedRecording
{
    /// <inheritdoc />
    public override string? Session => results.Session;

    /// <inheritdoc />
    public override string Source => results.Source;

    /// <inheritdoc />
    public override RecordingResults Read() => results;
}
