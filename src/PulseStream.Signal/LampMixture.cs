namespace PulseStream.Signal;

/// <summary>
/// Red over infrared of a lamp on one of the pulse's harmonics. A lamp keeps its mixture; the heart does not keep to the lamp's time, so
/// that over some tens of beats what the line holds of the pulse goes as often with the lamp as against it.
/// </summary>
/// <remarks>e = red − R × infrared holds none of the pulse and is (M − R) times the lamp: 1 / (M − R) is the regression of infrared on it.</remarks>
internal sealed class LampMixture
{
    // The phase of a second harmonic wanders by a radian within some fifteen beats that vary by 2 %.
    private const double Forgotten = 1.0 / 30;
    private double power;
    private double cross;

    /// <summary>Takes a line in and tells the mixture so far. To be asked once a second.</summary>
    /// <param name="whole">The window with its line, infrared and red in turn.</param>
    /// <param name="without">The same without its line.</param>
    /// <param name="ratio">R of the pulse.</param>
    public double Of(ReadOnlySpan<double> whole, ReadOnlySpan<double> without, double ratio)
    {
        double square = 0, product = 0;
        for (var n = 0; n + 1 < whole.Length; n += 2)
        {
            var infrared = whole[n] - without[n];
            var beside = whole[n + 1] - without[n + 1] - (ratio * infrared);
            square += beside * beside;
            product += beside * infrared;
        }

        power += (square / whole.Length) - (Forgotten * power);
        cross += (product / whole.Length) - (Forgotten * cross);
        return ratio + (power / cross);
    }
}
