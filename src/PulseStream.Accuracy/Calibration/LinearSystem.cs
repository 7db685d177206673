namespace PulseStream.Accuracy.Calibration;

/// <summary>Solves small systems of linear equations by Gaussian elimination with row exchange.</summary>
internal static class LinearSystem
{
    // Relative to the largest element: below it the columns say the same thing twice.
    private const double Singular = 1e-13;

    /// <summary>Solves matrix · x = right.</summary>
    /// <returns>Null where the system has no single solution.</returns>
    public static double[]? Solve(double[,] matrix, double[] right)
    {
        var size = right.Length;
        var (a, b) = ((double[,])matrix.Clone(), (double[])right.Clone());
        var scale = a.Cast<double>().Max(Math.Abs);
        for (var column = 0; column < size; column++)
        {
            ExchangeRows(a, b, column);
            if (!(Math.Abs(a[column, column]) > Singular * scale))
            {
                return null;
            }

            for (var row = column + 1; row < size; row++)
            {
                var factor = a[row, column] / a[column, column];
                for (var k = column; k < size; k++)
                {
                    a[row, k] -= factor * a[column, k];
                }

                b[row] -= factor * b[column];
            }
        }

        return SubstituteBack(a, b);
    }

    private static void ExchangeRows(double[,] a, double[] b, int column)
    {
        var size = b.Length;
        var pivot = Enumerable.Range(column, size - column).MaxBy(row => Math.Abs(a[row, column]));
        for (var k = 0; k < size; k++)
        {
            (a[column, k], a[pivot, k]) = (a[pivot, k], a[column, k]);
        }

        (b[column], b[pivot]) = (b[pivot], b[column]);
    }

    private static double[] SubstituteBack(double[,] a, double[] b)
    {
        var x = new double[b.Length];
        for (var row = b.Length - 1; row >= 0; row--)
        {
            x[row] = b[row];
            for (var k = row + 1; k < b.Length; k++)
            {
                x[row] -= a[row, k] * x[k];
            }

            x[row] /= a[row, row];
        }

        return x;
    }
}
