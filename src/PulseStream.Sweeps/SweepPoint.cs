namespace PulseStream.Sweeps;

/// <summary>The coordinates of a cell; NaN where a recorded cell does not tell one.</summary>
/// <param name="Spo2">Saturation, percent.</param>
/// <param name="Perfusion">Percent.</param>
/// <param name="Pulse">Beats a minute.</param>
/// <param name="Motion">Size of the movement over the pulse, 0 for none.</param>
/// <param name="Noise">Deviation of white noise over the light.</param>
/// <param name="Rate">Samples a second.</param>
public readonly record struct SweepPoint(double Spo2, double Perfusion, double Pulse, double Motion, double Noise, double Rate)
{
    /// <summary>Names of the coordinates, in order.</summary>
    public static IReadOnlyList<string> Names { get; } = ["spo2", "perfusion", "pulse", "motion", "noise", "rate"];

    /// <summary>The coordinates in the order of <see cref="Names"/>.</summary>
    public IReadOnlyList<double> Values => [Spo2, Perfusion, Pulse, Motion, Noise, Rate];
}
