namespace PulseStream.Readings;

/// <summary>How a sitting ended.</summary>
public enum SittingOutcome
{
    /// <summary>No reading was accepted.</summary>
    None = 0,

    /// <summary>The accepted readings agree and the finger was on long enough: one of them is the reading of record.</summary>
    Accepted,

    /// <summary>Readings were accepted, but they differ too much or the finger was not on long enough to choose one.</summary>
    Unsettled,
}
