namespace PulseStream.Cli;

/// <summary>What the program tells the shell.</summary>
internal static class ExitStatus
{
    public const int Done = 0;

    /// <summary>One of several recordings could not be read; the others were.</summary>
    public const int NotAll = 1;

    /// <summary>The work was done, and a criterion in force was not met.</summary>
    public const int NotMet = 1;

    public const int BadInput = 2;

    /// <summary>A device was lost and did not come back; everything received is kept.</summary>
    public const int DeviceLost = 3;

    /// <summary>Cancelled; everything received so far is kept.</summary>
    public const int Cancelled = 130;
}
