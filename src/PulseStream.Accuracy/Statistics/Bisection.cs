namespace PulseStream.Accuracy.Statistics;

/// <summary>Turns a distribution into its quantiles by halving an interval.</summary>
internal static class Bisection
{
    // Below one rounding error of the quantiles that are asked for.
    private const double Tolerance = 1e-13;

    /// <summary>The value below which a share of a distribution lies.</summary>
    /// <param name="shareBelow">Share below a value, rising.</param>
    /// <param name="share">The share.</param>
    /// <param name="low">A value that less lies below.</param>
    /// <param name="high">One that as much lies below, or more.</param>
    public static double Quantile(Func<double, double> shareBelow, double share, double low, double high)
    {
        while (high - low > Tolerance * high)
        {
            var middle = (low + high) / 2;
            if (middle <= low || middle >= high)
            {
                break;
            }

            (low, high) = shareBelow(middle) < share ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }
}
