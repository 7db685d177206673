namespace PulseStream.Simulation.Episodes;

/// <summary>Where the finger is; of several at once the largest counts.</summary>
public enum FingerPlacement
{
    /// <summary>In its place.</summary>
    On = 0,

    /// <summary>Sliding out, light getting past it more and more.</summary>
    Slipping = 1,

    /// <summary>Partly out, light getting past it.</summary>
    HalfOff = 2,

    /// <summary>Something without blood is in its place.</summary>
    Lifeless = 3,

    /// <summary>Nothing is in its place.</summary>
    Off = 4,
}
