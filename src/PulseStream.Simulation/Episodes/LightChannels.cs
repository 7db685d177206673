namespace PulseStream.Simulation.Episodes;

/// <summary>Which of the two lights is touched.</summary>
public enum LightChannels
{
    /// <summary>Red and infrared.</summary>
    Both,

    /// <summary>Red alone.</summary>
    Red,

    /// <summary>Infrared alone.</summary>
    Infrared,
}
