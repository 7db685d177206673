namespace PulseStream.Accuracy.Statistics;

/// <summary>Student's t distribution.</summary>
public static class StudentT
{
    /// <summary>Half width of a two-sided 95 % interval in standard errors.</summary>
    /// <param name="degreesOfFreedom">Above 0, also broken.</param>
    public static double TwoSided95(double degreesOfFreedom) => Quantile(0.975, degreesOfFreedom);

    /// <summary>The value below which a share of the distribution lies.</summary>
    /// <param name="share">From 0.5 up to, not including, 1.</param>
    /// <param name="degreesOfFreedom">Above 0, also broken.</param>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its limits.</exception>
    public static double Quantile(double share, double degreesOfFreedom)
    {
        if (!(share >= 0.5 && share < 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "The share lies in [0.5, 1).");
        }

        if (!(degreesOfFreedom > 0))
        {
            throw new ArgumentOutOfRangeException(nameof(degreesOfFreedom), degreesOfFreedom, "There is more than no degree of freedom.");
        }

        var (low, high) = (0.0, 1.0);
        while (ShareBelow(high, degreesOfFreedom) < share)
        {
            high *= 2;
        }

        return Bisection.Quantile(x => ShareBelow(x, degreesOfFreedom), share, low, high);
    }

    private static double ShareBelow(double t, double df) => 1 - (RegularisedBeta.At(df / (df + (t * t)), df / 2, 0.5) / 2);
}
