namespace PulseStream.Sources.Wire;

/// <summary>Why bytes from a wire make no sample.</summary>
public enum WireFault
{
    /// <summary>None.</summary>
    None = 0,

    /// <summary>No frame begins where one should.</summary>
    Garbage,

    /// <summary>The checksum is not that of the bytes.</summary>
    Checksum,

    /// <summary>A frame or line has another length than the layout's.</summary>
    Length,

    /// <summary>The bytes cannot be taken out of their framing.</summary>
    Stuffing,

    /// <summary>A field is no number.</summary>
    NotANumber,

    /// <summary>A field of light is below zero.</summary>
    NegativeCounts,

    /// <summary>A counter that the next frame does not confirm.</summary>
    StrayCounter,
}
