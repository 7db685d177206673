namespace PulseStream.Archive;

/// <summary>How often the journal of a running session is secured.</summary>
public enum JournalPace
{
    /// <summary>
    /// The samples exist nowhere else: secured each second of signal, and each commit waits for the disk, so that a power
    /// cut costs the last second at most.
    /// </summary>
    Live = 0,

    /// <summary>
    /// The samples come from a recording that stays: secured each minute of signal without waiting for the disk. What a
    /// kill or a power cut takes away, the same replay brings back.
    /// </summary>
    Replay,
}
