namespace PulseStream.Signal;

/// <summary>One second-order section, H(z) = (B0 + B1 z⁻¹ + B2 z⁻²) / (1 + A1 z⁻¹ + A2 z⁻²).</summary>
/// <param name="B0">Numerator, no unit.</param>
/// <param name="B1">Numerator, no unit.</param>
/// <param name="B2">Numerator, no unit.</param>
/// <param name="A1">Denominator, no unit.</param>
/// <param name="A2">Denominator, no unit.</param>
public readonly record struct SecondOrderSection(double B0, double B1, double B2, double A1, double A2);
