namespace PulseStream.Accuracy.Statistics;

/// <summary>The lower half of the chi-square distribution.</summary>
public static class ChiSquare
{
    private const double Precision = 1e-16;

    /// <summary>The value below which a share of the distribution lies.</summary>
    /// <param name="share">Above 0, up to 0.5.</param>
    /// <param name="degreesOfFreedom">Above 0, also broken.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its limits.</exception>
    public static double Quantile(double share, double degreesOfFreedom)
    {
        if (!(share is > 0 and <= 0.5))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "The share lies in (0, 0.5].");
        }

        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "There is more than no degree of freedom.");
        }

        // The median lies below the mean.
        return Bisection.Quantile(x => ShareBelow(x, degreesOfFreedom), share, 0, degreesOfFreedom);
    }

    // M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions, 26.4.6: all terms are positive.
    private static double ShareBelow(double x, double df)
    {
        var (term, sum) = (1.0, 1.0);
        for (var r = 1; term > Precision * sum; r++)
        {
            term *= x / (df + (2 * r));
            sum += term;
        }

        return Math.Exp((df / 2 * Math.Log(x / 2)) - (x / 2) - GammaFunction.LogAt((df / 2) + 1)) * sum;
    }
}
