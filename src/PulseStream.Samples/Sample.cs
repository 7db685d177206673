namespace PulseStream.Samples;

/// <summary>One instant of an oximeter's detector. What the recording has no column for is NaN.</summary>
/// <param name="Red">Light at the red wavelength, detector counts, more light is larger.</param>
/// <param name="Infrared">Light at the infrared wavelength, detector counts, more light is larger.</param>
/// <param name="Ambient">Detector counts with both emitters dark.</param>
/// <param name="Pleth">A ready-made plethysmogram instead of light, more blood is larger, no unit.</param>
/// <param name="AccelerationX">Acceleration of the sensor, m/s².</param>
/// <param name="AccelerationY">Acceleration of the sensor, m/s².</param>
/// <param name="AccelerationZ">Acceleration of the sensor, m/s².</param>
public readonly record struct Sample(
    double Red,
    double Infrared,
    double Ambient,
    double Pleth,
    double AccelerationX,
    double AccelerationY,
    double AccelerationZ)
{
    /// <summary>A sample of the two lights alone, everything else NaN.</summary>
    /// <param name="red">Detector counts.</param>
    /// <param name="infrared">Detector counts.</param>
    public static Sample OfLight(double red, double infrared) =>
        new(red, infrared, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN);

    /// <summary>A sample of a ready-made plethysmogram alone, everything else NaN.</summary>
    /// <param name="pleth">More blood is larger, no unit.</param>
    public static Sample OfPleth(double pleth) =>
        new(double.NaN, double.NaN, double.NaN, pleth, double.NaN, double.NaN, double.NaN);
}
