namespace PulseStream.Signal;

/// <summary>How much of a window is taken away as slow: what no pulse of such a rate has in it.</summary>
internal enum SlowEdge
{
    /// <summary>Nothing of any pulse.</summary>
    OfAnyPulse,

    /// <summary>The second harmonic of common breathing as well.</summary>
    OfFastPulse,

    /// <summary>The second harmonic of fast breathing as well.</summary>
    OfRapidPulse,
}
