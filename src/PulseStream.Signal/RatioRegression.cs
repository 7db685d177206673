namespace PulseStream.Signal;

/// <summary>
/// Regression of red on infrared in a window whose slow part has been taken away. Both lights see the same blood, so red
/// is R times infrared; what is left over tells how far that holds.
/// </summary>
/// <remarks>
/// Least squares with the infrared's own noise taken out of its variance (errors in variables: W. A. Fuller, Measurement
/// Error Models, 1987, section 1.2). A term linear in time lets R move within the window.
/// </remarks>
internal static class RatioRegression
{
    // Three standard deviations: below that a drift of R is noise.
    private const double DriftSignificance = 9;

    // The drifting R is read at this place of the window (-1 start, 1 end): late enough to follow; 0.5 would shoot over a step by 4 % of it.
    private const double ReadAt = 0.4;

    // A window holds some fifty degrees of freedom; the guard only keeps a square root real where lines took nearly all.
    private const double LeastFreedom = 4;

    // Below this share of the infrared's power there is no pulse to speak of, and the correction would blow up.
    private const double LeastPulseShare = 0.05;
    private const double NoiseDeviations = 4;

    /// <summary>Fits one window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="noise">White noise of a bin.</param>
    /// <param name="noiseGain">Variance that smoothing leaves of white noise.</param>
    /// <param name="removed">Degrees of freedom taken away with the slow part and with lines.</param>
    /// <param name="windowSeconds">Length of the window, s.</param>
    public static RatioFit Fit(ReadOnlySpan<double> pairs, WhiteNoise noise, double noiseGain, int removed, int windowSeconds)
    {
        var bins = pairs.Length / 2;
        return Fit(RatioSums.Over(pairs), bins, noise, (bins * noiseGain) - removed, windowSeconds);
    }

    /// <summary>Fits what is not white noise smoothed, but has as much noise in each degree of freedom as that has.</summary>
    /// <param name="sums">Sums over the window.</param>
    /// <param name="bins">Places in it.</param>
    /// <param name="noise">White noise of a degree of freedom.</param>
    /// <param name="degrees">Degrees of freedom of white noise.</param>
    /// <param name="windowSeconds">Length of the window, s.</param>
    public static RatioFit Fit(in RatioSums sums, int bins, WhiteNoise noise, double degrees, int windowSeconds)
    {
        var freedom = Math.Max(LeastFreedom, degrees);
        var fit = sums.Solve();
        var infraredNoise = freedom * noise.WithoutPulse(fit.Ratio).Infrared;
        var residualPower = Math.Max(fit.RestMoving, 0);
        if (fit.Ratio > 0)
        {
            infraredNoise = Math.Min(infraredNoise, residualPower / (fit.Ratio * fit.Ratio));
        }

        var pulsePower = Math.Max(sums.Infrared - infraredNoise, sums.Infrared * LeastPulseShare);
        var unbias = sums.Infrared / pulsePower;
        var scatter = NoiseDeviations * Math.Sqrt(2 / freedom);
        var white = WhiteOf(noise.OfResidual(fit.Ratio), residualPower / freedom, scatter);
        var isMoving = fit.RestSteady - fit.RestMoving > DriftSignificance * white;
        var error = Math.Sqrt(white / pulsePower);

        // White noise is known to within its own scatter: four of its standard deviations are no disagreement.
        var expected = freedom * noise.OfResidual(fit.Ratio) * (1 + scatter);
        return new(
            windowSeconds,
            unbias * (isMoving ? fit.Middle + (ReadAt * fit.Drift) : fit.Ratio),
            isMoving ? error * Math.Sqrt(1 + (3 * ReadAt * ReadAt)) : error,
            Math.Sqrt(Math.Max(0, residualPower - expected) / sums.Infrared),
            Math.Sqrt(pulsePower / bins),
            Math.Sqrt(freedom * noise.Infrared / bins),
            isMoving,
            isMoving ? Math.Abs(fit.Drift) : 0,
            0,
            false,
            0,
            default);
    }

    // What smoothing takes away holds fast harmonics and mains light too; noise in the band is no more than what is left there.
    private static double WhiteOf(double beyondBand, double inBand, double scatter) =>
        Math.Max(inBand, Math.Min(beyondBand, inBand * (1 + scatter)));
}
