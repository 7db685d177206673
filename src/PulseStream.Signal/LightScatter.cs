namespace PulseStream.Signal;

/// <summary>Variances of both lights and their covariance over the newest seconds, slow part removed, in squared units of the natural logarithm of light.</summary>
/// <param name="Infrared">Variance of infrared.</param>
/// <param name="Red">Variance of red.</param>
/// <param name="Common">Covariance of the two.</param>
/// <param name="LineShare">Share of what they disagree by that one frequency explains, 0 to 1.</param>
/// <param name="LineHz">That frequency, Hz.</param>
public readonly record struct LightScatter(double Infrared, double Red, double Common, double LineShare, double LineHz)
{
    /// <summary>
    /// Size of what is left when all light of one mixture is cancelled, whatever its course: m × infrared − red, root mean
    /// square. Of a pulse it leaves |m − R| times its size.
    /// </summary>
    /// <param name="mix">m, red over infrared of that light, in the logarithm of light.</param>
    public double SizeWithout(double mix) => Math.Sqrt(Math.Max(0, (mix * mix * Infrared) - (2 * mix * Common) + Red));

    /// <summary>
    /// Red over infrared of what disturbs a pulse of known R: e = red − R × infrared holds none of the pulse, and infrared
    /// goes with it as 1 / (m − R), the pulse itself going its own way.
    /// </summary>
    /// <param name="ratio">R of the pulse.</param>
    public double MixOfDisturbance(double ratio)
    {
        var power = Red - (2 * ratio * Common) + (ratio * ratio * Infrared);
        return ratio + (power / (Common - (ratio * Infrared)));
    }
}
