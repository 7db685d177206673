namespace PulseStream.Readings;

/// <summary>The curve that turns a ratio of ratios into SpO2; its name goes into every output.</summary>
public sealed class CalibrationCurve
{
    private readonly double[] coefficients;
    private readonly double[] tableRatios;
    private readonly double[] tablePercents;

    private CalibrationCurve(string name, double from, double to, double? armsPercent, string source, double[] coefficients, double[] tableRatios, double[] tablePercents)
    {
        Name = name;
        FromRatio = from;
        ToRatio = to;
        ArmsPercent = armsPercent;
        Source = source;
        this.coefficients = coefficients;
        this.tableRatios = tableRatios;
        this.tablePercents = tablePercents;
    }

    /// <summary>
    /// The textbook line SpO2 = 110 − 25 R, taken from 100 down to 50 %. Source: J. G. Webster (ed.), Design of Pulse Oximeters,
    /// 1997, which is quoted as valid for R of 0.4 to 1.0 or so; a device has a curve of its own.
    /// </summary>
    public static CalibrationCurve TextbookLine { get; } =
        OfPolynomial("textbook-line", [110, -25], 0.4, 2.4, null, "Webster (ed.), Design of Pulse Oximeters, 1997: SpO2 = 110 − 25 R");

    /// <summary>Stands for the curve of an instrument that tells finished readings: it is not known, and nothing is computed with it.</summary>
    public static CalibrationCurve OfInstrument { get; } =
        OfPolynomial("instrument", [110, -25], 0.4, 2.4, null, "the instrument's own, not known; the line stands in its place and is not used");

    /// <summary>The curve's name.</summary>
    public string Name { get; }

    /// <summary>Lowest ratio of ratios that the curve was made for.</summary>
    public double FromRatio { get; }

    /// <summary>Highest ratio of ratios that the curve was made for.</summary>
    public double ToRatio { get; }

    /// <summary>The device's stated accuracy A_rms, SpO2 percentage points; null where none is stated.</summary>
    public double? ArmsPercent { get; }

    /// <summary>Where the curve comes from.</summary>
    public string Source { get; }

    /// <summary>Coefficients in ascending powers of R; empty where the curve is a table.</summary>
    public ReadOnlySpan<double> Coefficients => coefficients;

    /// <summary>Ratios of the table, rising; empty where the curve is a polynomial.</summary>
    public ReadOnlySpan<double> TableRatios => tableRatios;

    /// <summary>SpO2 at each of <see cref="TableRatios"/>, percent.</summary>
    public ReadOnlySpan<double> TablePercents => tablePercents;

    /// <summary>A polynomial in R.</summary>
    /// <param name="name">Name of the curve.</param>
    /// <param name="coefficients">In ascending powers of R, at least two.</param>
    /// <param name="fromRatio">Lowest R.</param>
    /// <param name="toRatio">Highest R, above the lowest.</param>
    /// <param name="armsPercent">Stated accuracy, or null.</param>
    /// <param name="source">Where the curve comes from.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two coefficients, or the range is empty.</exception>
    public static CalibrationCurve OfPolynomial(string name, ReadOnlySpan<double> coefficients, double fromRatio, double toRatio, double? armsPercent, string source)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(coefficients.Length, 2);
        ThrowUnlessRange(fromRatio, toRatio);
        return new(name, fromRatio, toRatio, armsPercent, source, coefficients.ToArray(), [], []);
    }

    /// <summary>A table, linear between its points.</summary>
    /// <param name="name">Name of the curve.</param>
    /// <param name="ratios">R, rising.</param>
    /// <param name="percents">SpO2 at each R, percent.</param>
    /// <param name="fromRatio">Lowest R.</param>
    /// <param name="toRatio">Highest R, above the lowest.</param>
    /// <param name="armsPercent">Stated accuracy, or null.</param>
    /// <param name="source">Where the curve comes from.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than two points, lengths that differ, ratios that do not rise, or an empty range.</exception>
    public static CalibrationCurve OfTable(string name, ReadOnlySpan<double> ratios, ReadOnlySpan<double> percents, double fromRatio, double toRatio, double? armsPercent, string source)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(ratios.Length, 2);
        ArgumentOutOfRangeException.ThrowIfNotEqual(percents.Length, ratios.Length);
        ThrowUnlessRange(fromRatio, toRatio);
        for (var i = 1; i < ratios.Length; i++)
        {
            if (!(ratios[i] > ratios[i - 1]))
            {
                throw new ArgumentOutOfRangeException(nameof(ratios), ratios[i], "The ratios of a table rise.");
            }
        }

        return new(name, fromRatio, toRatio, armsPercent, source, [], ratios.ToArray(), percents.ToArray());
    }

    /// <summary>SpO2 at a ratio of ratios, percent; not limited to 0 to 100.</summary>
    /// <param name="ratio">Ratio of ratios R, no unit.</param>
    public double PercentAt(double ratio) => coefficients.Length > 0 ? PolynomialAt(ratio) : TableAt(ratio);

    /// <summary>Slope of the curve, percentage points for one unit of R.</summary>
    /// <param name="ratio">Ratio of ratios R, no unit.</param>
    public double SlopeAt(double ratio)
    {
        const double step = 1e-4;
        return (PercentAt(ratio + step) - PercentAt(ratio - step)) / (2 * step);
    }

    private static void ThrowUnlessRange(double fromRatio, double toRatio)
    {
        if (!(fromRatio < toRatio))
        {
            throw new ArgumentOutOfRangeException(nameof(toRatio), toRatio, "The range of R ends above its start.");
        }
    }

    private double PolynomialAt(double ratio)
    {
        var value = 0.0;
        for (var i = coefficients.Length - 1; i >= 0; i--)
        {
            value = (value * ratio) + coefficients[i];
        }

        return value;
    }

    private double TableAt(double ratio)
    {
        var upper = 1;
        while (upper < tableRatios.Length - 1 && tableRatios[upper] < ratio)
        {
            upper++;
        }

        var share = (ratio - tableRatios[upper - 1]) / (tableRatios[upper] - tableRatios[upper - 1]);
        return tablePercents[upper - 1] + (share * (tablePercents[upper] - tablePercents[upper - 1]));
    }
}
