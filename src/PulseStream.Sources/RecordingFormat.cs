namespace PulseStream.Sources;

/// <summary>A format of recordings that is read and written.</summary>
public enum RecordingFormat
{
    /// <summary>Comma-separated text.</summary>
    Csv = 0,

    /// <summary>A WFDB header with its file of samples.</summary>
    Wfdb,

    /// <summary>EDF+.</summary>
    Edf,

    /// <summary>Parquet, as an archive holds samples.</summary>
    Parquet,
}
