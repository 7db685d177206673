namespace PulseStream.Signal;

/// <summary>Variances of the white noise of one bin, read off what smoothing takes away, in squared units of the natural logarithm of light.</summary>
/// <param name="Infrared">Variance of infrared.</param>
/// <param name="Red">Variance of red.</param>
/// <param name="Common">Covariance of the two.</param>
internal readonly record struct WhiteNoise(double Infrared, double Red, double Common)
{
    /// <summary>Variance of red − R × infrared.</summary>
    public double OfResidual(double ratio) =>
        Math.Max(0, Red - (2 * ratio * Common) + (ratio * ratio * Infrared));
}
