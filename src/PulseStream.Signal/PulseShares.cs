namespace PulseStream.Signal;

/// <summary>What the two lights of a window have of a laid-out pulse, as multiples of its height in infrared, and what may be chance in that.</summary>
/// <param name="Infrared">Infrared's share.</param>
/// <param name="Red">Red's share.</param>
/// <param name="InfraredVariance">Variance of infrared's share.</param>
/// <param name="Slope">What red's share has more by chance for each that infrared's has.</param>
/// <param name="OwnRedVariance">Variance of red's share beside that.</param>
internal readonly record struct PulseShares(double Infrared, double Red, double InfraredVariance = 0, double Slope = 0, double OwnRedVariance = 0)
{
    /// <summary>Shares by plain least squares, whatever moves beside the pulse.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="pulse">The laid-out pulse as the second of each pair.</param>
    public static PulseShares Plain(ReadOnlySpan<double> pairs, ReadOnlySpan<double> pulse)
    {
        double ofInfrared = 0, ofRed = 0, power = 0;
        for (var n = 0; n < pairs.Length; n += 2)
        {
            ofInfrared += pairs[n] * pulse[n + 1];
            ofRed += pairs[n + 1] * pulse[n + 1];
            power += pulse[n + 1] * pulse[n + 1];
        }

        return new(ofInfrared / power, ofRed / power);
    }

    /// <summary>Leaves what the lights are without their shares.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="pulse">The laid-out pulse as the second of each pair.</param>
    /// <param name="rest">Where it is left; as long.</param>
    public void Leave(ReadOnlySpan<double> pairs, ReadOnlySpan<double> pulse, Span<double> rest)
    {
        for (var n = 0; n < pairs.Length; n += 2)
        {
            rest[n] = pairs[n] - (Infrared * pulse[n + 1]);
            rest[n + 1] = pairs[n + 1] - (Red * pulse[n + 1]);
        }
    }
}
