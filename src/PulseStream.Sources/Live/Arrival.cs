namespace PulseStream.Sources.Live;

/// <summary>Bytes that came.</summary>
/// <param name="Bytes">Empty where the line was closed instead.</param>
/// <param name="Seconds">When, since the port was first opened.</param>
internal readonly record struct Arrival(byte[] Bytes, double Seconds);
