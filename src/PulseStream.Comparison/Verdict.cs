namespace PulseStream.Comparison;

/// <summary>How the results of a recording differ, worst last.</summary>
public enum Verdict
{
    /// <summary>The same readings and no other advice.</summary>
    Same = 0,

    /// <summary>The same advice; readings appeared, vanished or have another value.</summary>
    Moved,

    /// <summary>An alarm that the second run gives and the first did not, or one more urgent.</summary>
    Gained,

    /// <summary>An alarm that the first run gave and the second lacks, or has less urgent.</summary>
    Lost,
}
