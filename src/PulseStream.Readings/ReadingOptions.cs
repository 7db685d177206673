using PulseStream.Signal;

namespace PulseStream.Readings;

/// <summary>Settings and limits from the samples to the sitting, each with its reason.</summary>
public sealed record ReadingOptions
{
    /// <summary>Consecutive usable seconds of one whole percent that make a reading: five (common practice in home monitoring).</summary>
    public int HeldSeconds { get; init; } = 5;

    /// <summary>How far the interval of those seconds, their mean, may reach to either side of the value, points, for a reading: a whole percent is not told that is not known to one.</summary>
    public double WidestAcceptedPercent { get; init; } = 1;

    /// <summary>Seconds that the finger has to be on before a reading of record is chosen: a minute (common practice in home monitoring).</summary>
    public int SittingSeconds { get; init; } = 60;

    /// <summary>Accepted readings of one sitting that differ by more than this many points leave it unsettled.</summary>
    public int UnsettledPoints { get; init; } = 3;

    /// <summary>Settings of the signal stage.</summary>
    public SignalOptions Signal { get; init; } = new();

    /// <summary>Limits between a believed and a refused second.</summary>
    public JudgeOptions Judge { get; init; } = new();
}
