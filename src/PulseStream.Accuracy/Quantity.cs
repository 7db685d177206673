namespace PulseStream.Accuracy;

/// <summary>What a device and a reference were compared in.</summary>
public enum Quantity
{
    /// <summary>Arterial saturation, percent.</summary>
    Saturation = 0,

    /// <summary>Pulse rate, beats a minute.</summary>
    PulseRate,
}
