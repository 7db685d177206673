namespace PulseStream.Comparison;

/// <summary>A reading as results tell it.</summary>
/// <param name="Second">The second at which it was accepted.</param>
/// <param name="Spo2Percent">Whole percent.</param>
public readonly record struct AcceptedValue(long Second, int Spo2Percent);
