namespace PulseStream.Accuracy.Statistics;

/// <summary>The regularised incomplete beta function, by its continued fraction.</summary>
/// <remarks>M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.5.8; evaluated by Lentz's method.</remarks>
internal static class RegularisedBeta
{
    private const double Smallest = 1e-300;
    private const double Precision = 1e-16;
    private const int MostSteps = 2000;

    public static double At(double x, double a, double b)
    {
        if (x is <= 0 or >= 1)
        {
            return x <= 0 ? 0 : 1;
        }

        var front = Math.Exp(GammaFunction.LogAt(a + b) - GammaFunction.LogAt(a) - GammaFunction.LogAt(b) + (a * Math.Log(x)) + (b * Math.Log(1 - x)));

        // Either side of the middle one of the two fractions converges quickly.
        return x < (a + 1) / (a + b + 2) ? front * Fraction(x, a, b) / a : 1 - (front * Fraction(1 - x, b, a) / b);
    }

    private static double Fraction(double x, double a, double b)
    {
        var (c, d) = (1.0, Inverse(1 - ((a + b) * x / (a + 1))));
        var value = d;
        for (var m = 1; m <= MostSteps; m++)
        {
            var even = m * (b - m) * x / ((a + (2 * m) - 1) * (a + (2 * m)));
            d = Inverse(1 + (even * d));
            c = AwayFromZero(1 + (even / c));
            value *= d * c;
            var odd = -(a + m) * (a + b + m) * x / ((a + (2 * m)) * (a + (2 * m) + 1));
            d = Inverse(1 + (odd * d));
            c = AwayFromZero(1 + (odd / c));
            value *= d * c;
            if (Math.Abs((d * c) - 1) < Precision)
            {
                break;
            }
        }

        return value;
    }

    private static double Inverse(double value) => 1 / AwayFromZero(value);

    private static double AwayFromZero(double value) => Math.Abs(value) < Smallest ? Smallest : value;
}
