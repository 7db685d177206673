namespace PulseStream.Tests.Signal;

/// <summary>
/// Light behind pulsing blood by Beer-Lambert with equal path lengths, from the tabulated extinction of haemoglobin at
/// 660 and 940 nm (S. Prahl's compilation; tests/vectors/optics/SOURCE.md).
/// </summary>
internal static class BloodLight
{
    private static readonly double[] Red = Extinction(660);
    private static readonly double[] Infrared = Extinction(940);

    /// <summary>Red and infrared counts behind more blood, in units of length times concentration.</summary>
    public static (double Red, double Infrared) Behind(double blood, double spo2Percent) =>
        (50_000 * Math.Exp(-blood * Of(Red, spo2Percent)), 80_000 * Math.Exp(-blood * Of(Infrared, spo2Percent)));

    /// <summary>Blood that changes infrared light by a share.</summary>
    public static double BloodOf(double infraredShare, double spo2Percent) => infraredShare / Of(Infrared, spo2Percent);

    /// <summary>The theoretical calibration: the saturation at which the two extinctions have a ratio, percent.</summary>
    public static double TheoryPercent(double ratio) =>
        100 * (Red[1] - (ratio * Infrared[1])) / (Red[1] - Red[0] + (ratio * (Infrared[0] - Infrared[1])));

    private static double Of(double[] extinction, double percent) =>
        (percent / 100 * extinction[0]) + ((1 - (percent / 100)) * extinction[1]);

    private static double[] Extinction(double nm) =>
        [.. Vectors.Rows("optics", "extinction.csv").Single(row => double.Parse(row[0]) == nm).Skip(1).Select(double.Parse)];
}
