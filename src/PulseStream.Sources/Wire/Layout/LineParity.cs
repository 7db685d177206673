namespace PulseStream.Sources.Wire.Layout;

/// <summary>Parity bit of a serial line.</summary>
public enum LineParity
{
    /// <summary>No parity bit.</summary>
    None = 0,

    /// <summary>An even number of ones.</summary>
    Even,

    /// <summary>An odd number of ones.</summary>
    Odd,
}
