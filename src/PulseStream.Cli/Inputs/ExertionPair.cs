namespace PulseStream.Cli.Inputs;

/// <summary>A check after a minute of standing up and sitting down, and the one at rest before it.</summary>
/// <param name="Time">Of the check after it.</param>
/// <param name="RestPercent">The last reading at rest before it.</param>
/// <param name="AfterPercent">The lowest reading after it.</param>
internal readonly record struct ExertionPair(DateTimeOffset Time, int RestPercent, int AfterPercent)
{
    /// <summary>A fall of so many points is said (common practice).</summary>
    public const int SaidPoints = 3;

    /// <summary>How long before it a reading at rest still speaks of the same quarter of an hour.</summary>
    public static readonly TimeSpan Longest = TimeSpan.FromMinutes(15);

    public int DropPoints => RestPercent - AfterPercent;
}
