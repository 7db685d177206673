namespace PulseStream.Comparison;

/// <summary>A recording of a run whose results are read when they are compared: those of thousands are never in memory together.</summary>
public abstract class ListedRecording
{
    /// <summary>Person, date and session in an archive; null where the results come from a file.</summary>
    public abstract string? Session { get; }

    /// <summary>The recording as the run named it.</summary>
    public abstract string Source { get; }

    /// <summary>Reads the results; may be called on any thread. What cannot be read is told in them.</summary>
    public abstract RecordingResults Read();
}
