namespace PulseStream.Course;

/// <summary>
/// What the height above sea level alone does to the SpO2 of a healthy person at rest: context, never a threshold. People
/// differ by several points, and those who live there have more.
/// </summary>
public static class Altitude
{
    /// <summary>The highest place it is told for, in metres: the highest that people live at.</summary>
    public const double HighestMetres = 5500;

    // Textbook values of a healthy adult: alveolar CO2 40 mmHg at sea level, falling with the height as breathing deepens
    // (about 30 mmHg at 4000 m); exchange ratio 0.8; water vapour at 37 °C 47 mmHg.
    private const double CarbonDioxide = 40;
    private const double CarbonDioxideFallPerMetre = 0.0025;
    private const double ExchangeRatio = 0.8;
    private const double WaterVapour = 47;
    private const double OxygenShare = 0.2093;

    // Alveolar minus arterial oxygen of the young and of the old (textbook: 5 to 15 mmHg).
    private const double LeastGradient = 5;
    private const double MostGradient = 15;

    private const double PascalPerTorr = 101_325.0 / 760;

    /// <summary>Pressure of the standard atmosphere in mmHg (ISO 2533:1975).</summary>
    /// <param name="metres">Geometric height, 0 to 11,000.</param>
    public static double PressureTorr(double metres)
    {
        var geopotential = 6_356_766 * metres / (6_356_766 + metres);
        return 101_325 * Math.Pow(1 - (0.0065 * geopotential / 288.15), 5.25588) / PascalPerTorr;
    }

    /// <summary>Alveolar oxygen in mmHg, by the full alveolar gas equation (Fenn, Rahn and Otis 1946).</summary>
    /// <param name="pressureTorr">Of the air.</param>
    /// <param name="oxygenShare">Of dry air, 0 to 1.</param>
    /// <param name="carbonDioxideTorr">Alveolar.</param>
    public static double AlveolarOxygenTorr(double pressureTorr, double oxygenShare, double carbonDioxideTorr) =>
        (oxygenShare * (pressureTorr - WaterVapour)) - (carbonDioxideTorr * (oxygenShare + ((1 - oxygenShare) / ExchangeRatio)));

    /// <summary>Saturation in percent (Severinghaus, J Appl Physiol 1979;46:599).</summary>
    /// <param name="oxygenTorr">Arterial oxygen, mmHg.</param>
    public static double SaturationPercent(double oxygenTorr)
    {
        var p = Math.Max(0, oxygenTorr);
        return p == 0 ? 0 : 100 / ((23_400 / ((p * p * p) + (150 * p))) + 1);
    }

    /// <summary>Expected SpO2 in percent: lungs of the old who breathe a little deeper, to lungs of the young who breathe as one does up there.</summary>
    /// <param name="metres">0 to <see cref="HighestMetres"/>.</param>
    public static (double LowPercent, double HighPercent) ExpectedPercent(double metres)
    {
        var pressure = PressureTorr(metres);
        var deep = CarbonDioxide - (CarbonDioxideFallPerMetre * metres);
        var between = (CarbonDioxide + deep) / 2;
        return (
            SaturationPercent(AlveolarOxygenTorr(pressure, OxygenShare, between) - MostGradient),
            SaturationPercent(AlveolarOxygenTorr(pressure, OxygenShare, deep) - LeastGradient));
    }
}
