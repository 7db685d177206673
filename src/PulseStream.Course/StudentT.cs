namespace PulseStream.Course;

/// <summary>The 0.975 quantile of Student's distribution.</summary>
internal static class StudentT
{
    // Tables of every textbook of statistics, to three decimals.
    private static readonly double[] Few = [12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306, 2.262];

    private const double Normal = 1.959964;

    /// <summary>The quantile for degrees of freedom, at least 1; beyond nine by the expansion of Abramowitz and Stegun 26.7.5, within 0.001.</summary>
    public static double TwoSided95(int degrees)
    {
        if (degrees <= Few.Length)
        {
            return Few[degrees - 1];
        }

        var (z, n) = (Normal, (double)degrees);
        var (z3, z5, z7) = (Math.Pow(z, 3), Math.Pow(z, 5), Math.Pow(z, 7));
        return z + ((z3 + z) / (4 * n)) + (((5 * z5) + (16 * z3) + (3 * z)) / (96 * n * n)) + (((3 * z7) + (19 * z5) + (17 * z3) - (15 * z)) / (384 * n * n * n));
    }
}
