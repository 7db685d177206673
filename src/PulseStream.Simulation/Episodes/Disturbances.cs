namespace PulseStream.Simulation.Episodes;

/// <summary>What disturbs the light.</summary>
[Flags]
public enum Disturbances
{
    /// <summary>Nothing.</summary>
    None = 0,

    /// <summary>The finger or the sensor moves.</summary>
    Motion = 1,

    /// <summary>Venous blood pulsates.</summary>
    Venous = 2,

    /// <summary>Steady light from outside.</summary>
    Ambient = 4,

    /// <summary>Light from outside that flickers with the mains.</summary>
    Flicker = 8,

    /// <summary>The emitters are too bright for the converter.</summary>
    TooBright = 16,

    /// <summary>Samples are missing.</summary>
    Missing = 32,
}
