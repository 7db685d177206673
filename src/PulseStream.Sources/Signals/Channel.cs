namespace PulseStream.Sources.Signals;

/// <summary>A value of a <see cref="Samples.Sample"/>, in the order of its members.</summary>
internal enum Channel
{
    Red,
    Infrared,
    Ambient,
    Pleth,
    AccelerationX,
    AccelerationY,
    AccelerationZ,
}
