namespace PulseStream.Samples;

/// <summary>Which values the samples of a recording carry; the others are NaN in every <see cref="Sample"/>.</summary>
[Flags]
public enum SampleColumns
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary><see cref="Sample.Red"/>.</summary>
    Red = 1,

    /// <summary><see cref="Sample.Infrared"/>.</summary>
    Infrared = 2,

    /// <summary><see cref="Sample.Ambient"/>.</summary>
    Ambient = 4,

    /// <summary><see cref="Sample.Pleth"/>.</summary>
    Pleth = 8,

    /// <summary>All three axes of acceleration.</summary>
    Acceleration = 16,
}
