namespace PulseStream.Accuracy.Calibration;

/// <summary>
/// The polynomial of a degree that fits weighted points best among those that fall, or stay, all the way from one ratio to
/// another.
/// </summary>
/// <remarks>
/// In Bernstein's basis over the range a polynomial falls where its coefficients do (G. Farin, Curves and Surfaces, 5.2;
/// enough for any degree, and needed up to the second). With the steps between coefficients as unknowns that is least
/// squares with steps of 0 or more; of so few unknowns every choice of steps that are 0 can be tried.
/// </remarks>
internal static class FallingPolynomial
{
    /// <summary>Fits it.</summary>
    /// <param name="points">Ratio, reference and weight of each point.</param>
    /// <param name="degree">1 to 3.</param>
    /// <param name="from">Lower end of the range.</param>
    /// <param name="to">Upper end of the range.</param>
    /// <returns>Coefficients in ascending powers of the ratio; null where the points do not tell them.</returns>
    public static double[]? Fit(IReadOnlyList<WeightedPoint> points, int degree, double from, double to)
    {
        var (normal, right) = NormalEquations(points, degree, from, to);
        double[]? best = null;
        var bestGain = double.NegativeInfinity;
        for (var zeros = 0; zeros < 1 << degree; zeros++)
        {
            if (SolveWithout(normal, right, zeros) is { } steps && steps.Skip(1).All(step => step >= 0) && GainOf(normal, right, steps) > bestGain)
            {
                (best, bestGain) = (steps, GainOf(normal, right, steps));
            }
        }

        return best is null ? null : PowersOf(best, from, to);
    }

    /// <summary>Value of a polynomial.</summary>
    /// <param name="coefficients">In ascending powers.</param>
    /// <param name="ratio">Where.</param>
    public static double At(IReadOnlyList<double> coefficients, double ratio)
    {
        var value = 0.0;
        for (var i = coefficients.Count - 1; i >= 0; i--)
        {
            value = (value * ratio) + coefficients[i];
        }

        return value;
    }

    // Unknown 0 is the value at the lower end, unknown i > 0 the step down from Bernstein coefficient i − 1 to i, which
    // multiplies minus the sum of the basis from i on.
    private static (double[,] Normal, double[] Right) NormalEquations(IReadOnlyList<WeightedPoint> points, int degree, double from, double to)
    {
        var normal = new double[degree + 1, degree + 1];
        var right = new double[degree + 1];
        var row = new double[degree + 1];
        foreach (var point in points)
        {
            var share = (point.Ratio - from) / (to - from);
            var sum = 0.0;
            for (var i = degree; i > 0; i--)
            {
                sum += Choose(degree, i) * Math.Pow(share, i) * Math.Pow(1 - share, degree - i);
                row[i] = -sum;
            }

            row[0] = 1;
            for (var i = 0; i <= degree; i++)
            {
                right[i] += point.Weight * row[i] * point.Reference;
                for (var j = 0; j <= degree; j++)
                {
                    normal[i, j] += point.Weight * row[i] * row[j];
                }
            }
        }

        return (normal, right);
    }

    private static double[]? SolveWithout(double[,] normal, double[] right, int zeros)
    {
        int[] kept = [0, .. Enumerable.Range(1, right.Length - 1).Where(i => (zeros & (1 << (i - 1))) == 0)];
        var small = new double[kept.Length, kept.Length];
        for (var i = 0; i < kept.Length; i++)
        {
            for (var j = 0; j < kept.Length; j++)
            {
                small[i, j] = normal[kept[i], kept[j]];
            }
        }

        if (LinearSystem.Solve(small, [.. kept.Select(i => right[i])]) is not { } found)
        {
            return null;
        }

        var steps = new double[right.Length];
        for (var i = 0; i < kept.Length; i++)
        {
            steps[kept[i]] = found[i];
        }

        return steps;
    }

    // By how much the sum of squares falls below that of no curve at all.
    private static double GainOf(double[,] normal, double[] right, double[] steps)
    {
        var gain = 0.0;
        for (var i = 0; i < steps.Length; i++)
        {
            gain += 2 * right[i] * steps[i];
            for (var j = 0; j < steps.Length; j++)
            {
                gain -= steps[i] * normal[i, j] * steps[j];
            }
        }

        return gain;
    }

    private static double[] PowersOf(double[] steps, double from, double to)
    {
        var degree = steps.Length - 1;
        var bernstein = new double[degree + 1];
        bernstein[0] = steps[0];
        for (var i = 1; i <= degree; i++)
        {
            bernstein[i] = bernstein[i - 1] - steps[i];
        }

        // Forward differences give powers of the share of the range; the binomial theorem then powers of the ratio.
        var powers = new double[degree + 1];
        for (var k = 0; k <= degree; k++)
        {
            var difference = Enumerable.Range(0, k + 1).Sum(i => ((k - i) % 2 == 0 ? 1 : -1) * Choose(k, i) * bernstein[i]);
            var scale = Choose(degree, k) * difference / Math.Pow(to - from, k);
            for (var j = 0; j <= k; j++)
            {
                powers[j] += scale * Choose(k, j) * Math.Pow(-from, k - j);
            }
        }

        return powers;
    }

    private static double Choose(int n, int k)
    {
        var value = 1.0;
        for (var i = 1; i <= k; i++)
        {
            value = value * (n - k + i) / i;
        }

        return value;
    }
}
