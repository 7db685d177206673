namespace PulseStream.Readings;

/// <summary>Why a second was refused, or what a usable second warns of.</summary>
[Flags]
public enum Reasons
{
    /// <summary>Nothing to say.</summary>
    None = 0,

    /// <summary>The start, or the time after a disturbance: the window does not yet hold enough undisturbed signal.</summary>
    Settling = 1,

    /// <summary>No finger between emitters and detector.</summary>
    NoFinger = 2,

    /// <summary>A channel stands at its end stop.</summary>
    Saturated = 4,

    /// <summary>Light from outside reaches the detector and varies, or outweighs the emitters'.</summary>
    AmbientLight = 8,

    /// <summary>The finger or the hand moves.</summary>
    Motion = 16,

    /// <summary>The finger is half off or slipping, light leaks past, or something other than arterial blood pulses.</summary>
    Misplaced = 32,

    /// <summary>The pulse is small; alone it is a warning.</summary>
    LowPerfusion = 64,

    /// <summary>A finger, and nothing that pulses.</summary>
    NoPulse = 128,

    /// <summary>Too many samples are missing from the window.</summary>
    MissingSamples = 256,

    /// <summary>The ratio of ratios lies outside the range that the calibration curve was made for.</summary>
    OutOfRange = 512,

    /// <summary>The rhythm is irregular; a warning, never a refusal.</summary>
    Irregular = 1024,
}
