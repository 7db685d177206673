namespace PulseStream.Readings;

/// <summary>
/// What is said of the second [SecondIndex, SecondIndex + 1); no sample after it was used. It is either usable or refused,
/// and one that nobody has judged is refused.
/// </summary>
public readonly record struct Second
{
    // A refused second stands here without saturation and pulse, its reasons where the warnings would be.
    private readonly UsableSecond said;
    private readonly bool isUsable;

    /// <summary>A second that can be believed.</summary>
    /// <param name="usable">What is said of it.</param>
    public Second(in UsableSecond usable)
    {
        said = usable;
        isUsable = true;
    }

    /// <summary>A second that is refused.</summary>
    /// <param name="unusable">What is said of it.</param>
    public Second(in UnusableSecond unusable) =>
        said = new(unusable.SecondIndex, null, null, unusable.PerfusionPercent, unusable.Reasons);

    /// <summary>Whole seconds since the recording's start.</summary>
    public long SecondIndex => said.SecondIndex;

    /// <summary>Infrared, peak to trough of a beat over the mean, percent; null where it is not known.</summary>
    public double? PerfusionPercent => said.PerfusionPercent;

    /// <summary>Whether it can be believed.</summary>
    public bool IsUsable => isUsable;

    /// <summary>What it says where it can be believed; else null.</summary>
    public UsableSecond? Usable => isUsable ? said : null;

    /// <summary>Why it is refused; null where it can be believed.</summary>
    public UnusableSecond? Unusable => isUsable ? null : new(said.SecondIndex, said.Warnings, said.PerfusionPercent);

    /// <summary>A second that can be believed.</summary>
    /// <param name="usable">What is said of it.</param>
    public static implicit operator Second(in UsableSecond usable) => new(usable);

    /// <summary>A second that is refused.</summary>
    /// <param name="unusable">What is said of it.</param>
    public static implicit operator Second(in UnusableSecond unusable) => new(unusable);
}
