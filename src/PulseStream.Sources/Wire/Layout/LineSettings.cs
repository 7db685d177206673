namespace PulseStream.Sources.Wire.Layout;

/// <summary>How bits travel on a serial line.</summary>
/// <param name="Baud">Bits a second.</param>
/// <param name="DataBits">Bits a character, 7 or 8.</param>
/// <param name="Parity">Parity bit.</param>
/// <param name="StopBits">1 or 2.</param>
public sealed record LineSettings(int Baud, int DataBits, LineParity Parity, int StopBits);
