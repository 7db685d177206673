namespace PulseStream.Signal;

/// <summary>
/// Takes one steady line out of a window: mains light folded into the pulse band is one frequency of constant size, added
/// to both lights. It is looked for in what red and infrared disagree by, where the pulse itself does not show.
/// </summary>
internal sealed class LineRemover
{
    private const double LowestHz = 0.6;
    private readonly double binRateHz;
    private readonly double[] rest;

    public LineRemover(SignalDesign design)
    {
        binRateHz = design.BinRateHz;
        rest = new double[design.LongestWindowBins];
    }

    /// <summary>Frequency of the line last found, Hz.</summary>
    public double LineHz { get; private set; }

    /// <summary>Cosine and sine of the line last removed from infrared, natural logarithm of light.</summary>
    public (double Cosine, double Sine) InInfrared { get; private set; }

    /// <summary>Cosine and sine of the line last removed from red, natural logarithm of light.</summary>
    public (double Cosine, double Sine) InRed { get; private set; }

    /// <summary>Finds the strongest line in red − R × infrared and, where it explains enough of it in both halves, removes it from both channels.</summary>
    /// <param name="pairs">Infrared and red in turn; changed only when true is returned.</param>
    /// <param name="ratio">R of the fit whose rest is searched.</param>
    /// <param name="noisePower">Σ of squares that white noise has in the rest.</param>
    /// <param name="enoughShare">Share of the rest beyond noise that the line has to explain.</param>
    public bool TryRemove(Span<double> pairs, double ratio, double noisePower, double enoughShare)
    {
        var length = pairs.Length / 2;
        var power = 0.0;
        for (var n = 0; n < length; n++)
        {
            rest[n] = pairs[(2 * n) + 1] - (ratio * pairs[2 * n]);
            power += rest[n] * rest[n];
        }

        LineHz = Strongest(length);
        var explained = PowerAt(0, length, LineHz);
        var early = PowerAt(0, length / 2, LineHz);
        var late = PowerAt(length / 2, length, LineHz);
        var isSteady = early > 0.5 * late && late > 0.5 * early;
        if (!isSteady || explained < enoughShare * (power - noisePower))
        {
            return false;
        }

        InInfrared = Subtract(pairs, length, 0);
        InRed = Subtract(pairs, length, 1);
        return true;
    }

    private double Strongest(int length)
    {
        var resolution = binRateHz / length;
        var highest = Math.Min(12, 0.45 * binRateHz);
        double best = 0, bestHz = LowestHz;
        for (var hz = LowestHz; hz <= highest; hz += resolution / 3)
        {
            var power = PowerAt(0, length, hz);
            if (power > best)
            {
                best = power;
                bestHz = hz;
            }
        }

        for (var step = resolution / 6; step > resolution / 200; step /= 2)
        {
            bestHz = Better(length, bestHz, step);
        }

        return bestHz;
    }

    private double Better(int length, double hz, double step)
    {
        var here = PowerAt(0, length, hz);
        if (PowerAt(0, length, hz + step) > here)
        {
            return hz + step;
        }

        return PowerAt(0, length, hz - step) > here ? hz - step : hz;
    }

    // Σ of squares that the best sine of this frequency explains (projection on sine and cosine, nearly orthogonal).
    private double PowerAt(int from, int to, double hz)
    {
        var angle = 2 * Math.PI * hz / binRateHz;
        var (turnSine, turnCosine) = Math.SinCos(angle);
        double cosine = 1, sine = 0, inPhase = 0, quadrature = 0;
        for (var n = from; n < to; n++)
        {
            inPhase += rest[n] * cosine;
            quadrature += rest[n] * sine;
            var next = (cosine * turnCosine) - (sine * turnSine);
            sine = (sine * turnCosine) + (cosine * turnSine);
            cosine = next;
        }

        return 2 * ((inPhase * inPhase) + (quadrature * quadrature)) / (to - from);
    }

    private (double Cosine, double Sine) Subtract(Span<double> pairs, int length, int lane)
    {
        var angle = 2 * Math.PI * LineHz / binRateHz;
        double cc = 0, ss = 0, cs = 0, xc = 0, xs = 0;
        for (var n = 0; n < length; n++)
        {
            var (sine, cosine) = Math.SinCos(angle * n);
            var x = pairs[(2 * n) + lane];
            cc += cosine * cosine;
            ss += sine * sine;
            cs += cosine * sine;
            xc += x * cosine;
            xs += x * sine;
        }

        var determinant = (cc * ss) - (cs * cs);
        var a = ((xc * ss) - (xs * cs)) / determinant;
        var b = ((xs * cc) - (xc * cs)) / determinant;
        for (var n = 0; n < length; n++)
        {
            var (sine, cosine) = Math.SinCos(angle * n);
            pairs[(2 * n) + lane] -= (a * cosine) + (b * sine);
        }

        return (a, b);
    }
}
