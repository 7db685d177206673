namespace PulseStream.Signal;

/// <summary>Variances of the white noise of one bin, read off what smoothing takes away, in squared units of the natural logarithm of light.</summary>
/// <param name="Infrared">Variance of infrared.</param>
/// <param name="Red">Variance of red.</param>
/// <param name="Common">Covariance of the two.</param>
internal readonly record struct WhiteNoise(double Infrared, double Red, double Common)
{
    /// <summary>As many times as much noise.</summary>
    public static WhiteNoise operator *(in WhiteNoise noise, double times) => new(times * noise.Infrared, times * noise.Red, times * noise.Common);

    /// <summary>Variance of red − R × infrared.</summary>
    public double OfResidual(double ratio) =>
        Math.Max(0, Red - (2 * ratio * Common) + (ratio * ratio * Infrared));

    /// <summary>The same without the fast waves of a pulse, which smoothing takes away too: both lights have them, red R times as high, and have no white noise in common.</summary>
    /// <param name="ratio">R.</param>
    public WhiteNoise WithoutPulse(double ratio)
    {
        // Less is chance: of a window's fifty bins and more, two noises have three tenths in common once in a hundred times.
        const double leastCorrelation = 0.3;
        return ratio > 0 && Common > leastCorrelation * Math.Sqrt(Infrared * Red)
            ? new(Math.Max(0, Infrared - (Common / ratio)), Math.Max(0, Red - (ratio * Common)), 0)
            : this;
    }

    /// <summary>The same without a steady line: smoothing took part of that away too, and it passed for noise.</summary>
    /// <param name="infrared">Cosine and sine of the line in smoothed infrared.</param>
    /// <param name="red">Cosine and sine of the line in smoothed red.</param>
    /// <param name="gain">What smoothing left of the line.</param>
    /// <param name="restGain">Variance of what smoothing takes away from white noise of variance 1.</param>
    public WhiteNoise WithoutLine((double Cosine, double Sine) infrared, (double Cosine, double Sine) red, double gain, double restGain)
    {
        // A line that smoothing all but removed is not known well enough to tell what was removed of it.
        const double leastGain = 0.2;
        if (gain < leastGain)
        {
            return this;
        }

        var takenOver = (1 - gain) / gain;
        var share = takenOver * takenOver / (2 * restGain);
        return new(
            Math.Max(0, Infrared - (share * ((infrared.Cosine * infrared.Cosine) + (infrared.Sine * infrared.Sine)))),
            Math.Max(0, Red - (share * ((red.Cosine * red.Cosine) + (red.Sine * red.Sine)))),
            Common - (share * ((infrared.Cosine * red.Cosine) + (infrared.Sine * red.Sine))));
    }
}
