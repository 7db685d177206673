namespace PulseStream.Simulation.Blood;

/// <summary>
/// How red and infrared pulsation depend on saturation: R = (S·a + (1 − S)·b) / (S·c + (1 − S)·d), where S is the share of
/// haemoglobin that carries oxygen and a, b, c, d are what oxygenated and other haemoglobin absorb of red and of infrared.
/// </summary>
/// <param name="RedWithOxygen">Absorption of red by haemoglobin that carries oxygen, any unit.</param>
/// <param name="RedWithout">Absorption of red by haemoglobin that carries none.</param>
/// <param name="InfraredWithOxygen">Absorption of infrared by haemoglobin that carries oxygen.</param>
/// <param name="InfraredWithout">Absorption of infrared by haemoglobin that carries none.</param>
public sealed record RatioModel(double RedWithOxygen, double RedWithout, double InfraredWithOxygen, double InfraredWithout)
{
    /// <summary>The textbook line R = (110 − SpO2) / 25.</summary>
    /// <remarks>Webster (ed.), Design of Pulse Oximeters, 1997; empirical, valid about R 0.4 to 1.0.</remarks>
    public static RatioModel Line { get; } = new(10, 110, 25, 25);

    /// <summary>Beer-Lambert with equal path lengths and molar extinctions at 660 and 940 nm, cm⁻¹/M.</summary>
    /// <remarks>Compilation of S. Prahl from Gratzer and Kollias. Differs from the line by 11 points at R = 1.</remarks>
    public static RatioModel Extinction660And940 { get; } = new(319.6, 3226.56, 1214, 693.44);

    /// <summary>Ratio of ratios of blood.</summary>
    /// <param name="spo2Percent">Saturation, percent.</param>
    public double RatioAt(double spo2Percent)
    {
        var with = spo2Percent / 100;
        return ((with * RedWithOxygen) + ((1 - with) * RedWithout)) / ((with * InfraredWithOxygen) + ((1 - with) * InfraredWithout));
    }
}
