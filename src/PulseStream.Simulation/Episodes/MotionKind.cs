namespace PulseStream.Simulation.Episodes;

/// <summary>The course of a movement.</summary>
public enum MotionKind
{
    /// <summary>Fidgeting: random, about 0.3 to 5 Hz, more at the slow end.</summary>
    Broadband,

    /// <summary>Tapping, shivering, walking: one frequency with its double, not quite even.</summary>
    Rhythmic,

    /// <summary>At the pulse's own frequency, beat by beat.</summary>
    Pulse,
}
