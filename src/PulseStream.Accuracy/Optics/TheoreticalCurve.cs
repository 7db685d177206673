using PulseStream.Readings;
using PulseStream.Samples;

namespace PulseStream.Accuracy.Optics;

/// <summary>The curve that Beer and Lambert's law gives for two wavelengths with equal path lengths.</summary>
/// <remarks>R = (S·ε_O,red + (1 − S)·ε_H,red) / (S·ε_O,infrared + (1 − S)·ε_H,infrared), S the share with oxygen.</remarks>
public sealed record TheoreticalCurve
{
    // Straight lines between so many points stay within 0.001 points of the curve at 660 and 940 nm.
    private const int Points = 501;

    private readonly Extinction red;
    private readonly Extinction infrared;

    private TheoreticalCurve(double redNanometres, double infraredNanometres) =>
        (RedNanometres, InfraredNanometres, red, infrared) = (redNanometres, infraredNanometres, Extinction.At(redNanometres), Extinction.At(infraredNanometres));

    /// <summary>Wavelength of red.</summary>
    public double RedNanometres { get; }

    /// <summary>Wavelength of infrared.</summary>
    public double InfraredNanometres { get; }

    /// <summary>The curve of two wavelengths.</summary>
    /// <param name="redNanometres">600 to 1000 nm.</param>
    /// <param name="infraredNanometres">600 to 1000 nm.</param>
    /// <exception cref="BadInputException">A wavelength is outside the table, or R does not rise as saturation falls.</exception>
    public static TheoreticalCurve Of(double redNanometres, double infraredNanometres)
    {
        var curve = new TheoreticalCurve(redNanometres, infraredNanometres);
        return curve.RatioAt(0) > curve.RatioAt(1)
            ? curve
            : throw new BadInputException(
                $"wavelengths {redNanometres:0.##} and {infraredNanometres:0.##} nm",
                "expected a ratio that falls as saturation rises, found that it does not",
                "Give red first, below 797 nm, and infrared second, above it");
    }

    /// <summary>Ratio of ratios of blood.</summary>
    /// <param name="share">Share of haemoglobin that carries oxygen, 0 to 1.</param>
    public double RatioAt(double share) =>
        ((share * red.WithOxygen) + ((1 - share) * red.Without)) / ((share * infrared.WithOxygen) + ((1 - share) * infrared.Without));

    /// <summary>Saturation at a ratio, percent.</summary>
    /// <param name="ratio">Ratio of ratios.</param>
    public double PercentAt(double ratio) => 100 * (red.Without - (ratio * infrared.Without))
        / (red.Without - red.WithOxygen + (ratio * (infrared.WithOxygen - infrared.Without)));

    /// <summary>The curve as every command takes it: a table from 100 down to 0 %.</summary>
    public CalibrationCurve ToCurve()
    {
        double[] shares = [.. Enumerable.Range(0, Points).Select(i => 1 - (i / (Points - 1.0)))];
        double[] ratios = [.. shares.Select(RatioAt)];
        return CalibrationCurve.OfTable(
            $"theory-{RedNanometres:0.##}-{InfraredNanometres:0.##}",
            ratios,
            [.. shares.Select(share => 100 * share)],
            ratios[0],
            ratios[^1],
            null,
            $"Beer-Lambert, equal path lengths, {RedNanometres:0.##} and {InfraredNanometres:0.##} nm; molar extinctions compiled by S. Prahl from W. B. Gratzer and N. Kollias");
    }
}
