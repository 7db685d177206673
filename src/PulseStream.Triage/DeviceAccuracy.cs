using PulseStream.Readings;

namespace PulseStream.Triage;

/// <summary>Joins the scatter of a signal with the accuracy of the device.</summary>
public static class DeviceAccuracy
{
    // A_rms is taken as the standard deviation of a normal error without bias: 95 of 100 lie within 1.96 of it.
    private const double NormalQuantile = 1.96;

    /// <summary>
    /// Widens a 95 % interval by a device's stated accuracy: each half becomes √(half² + (1.96 · A_rms)²), within 0 to
    /// 100 %. Independent errors add in quadrature (common practice).
    /// </summary>
    /// <param name="spo2">The value with its interval from the signal.</param>
    /// <param name="armsPercent">The device's A_rms, SpO2 percentage points; 0 leaves the interval as it is.</param>
    /// <exception cref="ArgumentOutOfRangeException">The accuracy is negative or not finite.</exception>
    public static Saturation Widen(Saturation spo2, double armsPercent)
    {
        Limits.NotNegative(armsPercent, nameof(armsPercent));
        var device = NormalQuantile * armsPercent;
        if (armsPercent == 0)
        {
            return spo2;
        }

        // Of a value that an instrument told alone, the device's accuracy is all the interval there is.
        var (percent, low, high) = spo2.OrPoint();
        return new Saturation(
            percent,
            Math.Max(0, percent - Math.Sqrt(Square(percent - low) + Square(device))),
            Math.Min(100, percent + Math.Sqrt(Square(high - percent) + Square(device))));
    }

    /// <summary>Half of the interval that the device's accuracy alone makes, SpO2 percentage points.</summary>
    /// <param name="armsPercent">The device's A_rms, SpO2 percentage points.</param>
    internal static double HalfWidth(double armsPercent) => NormalQuantile * armsPercent;

    private static double Square(double value) => value * value;
}
