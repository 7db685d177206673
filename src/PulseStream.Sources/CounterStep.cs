namespace PulseStream.Sources;

/// <summary>What a <see cref="SampleCounter"/> makes of a value.</summary>
public enum CounterStep
{
    /// <summary>The first value, one ahead of the last, or one past a wrap: its sample is new.</summary>
    Taken,

    /// <summary>The last value once more: its sample has been seen; no fault.</summary>
    Repeat,

    /// <summary>A value behind the last one that no wrap explains: refused.</summary>
    StepBack,
}
