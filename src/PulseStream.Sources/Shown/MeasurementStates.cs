namespace PulseStream.Sources.Shown;

/// <summary>Measurement Status of the pulse oximeter service: the bits that keep a value from being believed.</summary>
[Flags]
public enum MeasurementStates
{
    /// <summary>None of those named here.</summary>
    None = 0,

    /// <summary>A first estimate.</summary>
    EarlyEstimate = 1 << 6,

    /// <summary>Shown to demonstrate the instrument.</summary>
    Demonstration = 1 << 10,

    /// <summary>Shown to test the instrument.</summary>
    Testing = 1 << 11,

    /// <summary>The instrument calibrates itself.</summary>
    Calibrating = 1 << 12,

    /// <summary>There is no measurement.</summary>
    Unavailable = 1 << 13,

    /// <summary>The instrument doubts the measurement.</summary>
    Questionable = 1 << 14,

    /// <summary>The instrument refuses the measurement.</summary>
    Invalid = 1 << 15,
}
