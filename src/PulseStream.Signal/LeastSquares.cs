using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Least squares of many columns by their normal equations (Cholesky); a column that the ones before it already hold has no part in the solution.</summary>
/// <param name="mostColumns">Most columns that are ever given.</param>
internal sealed class LeastSquares(int mostColumns)
{
    // What is left of a column's power that the ones before it do not hold: below it rounding decides.
    private const double LeastNewShare = 1e-7;
    private readonly double[] gram = new double[mostColumns * mostColumns];
    private readonly double[] solution = new double[mostColumns];
    private int count;

    /// <summary>Share of each column.</summary>
    public ReadOnlySpan<double> Solution => solution.AsSpan(0, count);

    /// <summary>Solves.</summary>
    /// <param name="columns">The columns, one after the other.</param>
    /// <param name="stride">From the beginning of one to that of the next.</param>
    /// <param name="columnCount">How many there are.</param>
    /// <param name="values">What they are to explain; as long as a column.</param>
    /// <param name="load">Power added to each column that goes with nothing else: shares that only small differences of columns tell stay small.</param>
    /// <returns>Power that they explain.</returns>
    public double Solve(ReadOnlySpan<double> columns, int stride, int columnCount, ReadOnlySpan<double> values, double load = 0)
    {
        count = columnCount;
        for (var k = 0; k < count; k++)
        {
            var column = columns.Slice(k * stride, values.Length);
            for (var earlier = 0; earlier <= k; earlier++)
            {
                gram[(k * mostColumns) + earlier] = Dot(column, columns.Slice(earlier * stride, values.Length));
            }
        }

        for (var k = 0; k < count && load > 0; k++)
        {
            gram[(k * mostColumns) + k] += load;
        }

        Factor();
        return SolveAgain(columns, stride, values);
    }

    /// <summary>Solves for other values by the columns of before.</summary>
    /// <param name="columns">The same columns.</param>
    /// <param name="stride">From the beginning of one to that of the next.</param>
    /// <param name="values">What they are to explain; as long as a column.</param>
    /// <returns>Power that they explain.</returns>
    public double SolveAgain(ReadOnlySpan<double> columns, int stride, ReadOnlySpan<double> values)
    {
        for (var k = 0; k < count; k++)
        {
            solution[k] = Dot(columns.Slice(k * stride, values.Length), values);
        }

        return Substitute();
    }

    private Span<double> Row(int k) => gram.AsSpan(k * mostColumns, k + 1);

    // The lower triangle in place; a diagonal of 0 marks a column that is none of its own.
    private void Factor()
    {
        for (var k = 0; k < count; k++)
        {
            var row = Row(k);
            var whole = row[k];
            for (var earlier = 0; earlier < k; earlier++)
            {
                var other = Row(earlier);
                row[earlier] = other[earlier] > 0 ? (row[earlier] - Projection.Dot(row[..earlier], other[..earlier])) / other[earlier] : 0;
            }

            var left = whole - Projection.Dot(row[..k], row[..k]);
            row[k] = left > LeastNewShare * whole ? Math.Sqrt(left) : 0;
        }
    }

    private double Substitute()
    {
        var power = 0.0;
        for (var k = 0; k < count; k++)
        {
            var row = Row(k);
            solution[k] = row[k] > 0 ? (solution[k] - Projection.Dot(row[..k], Solution[..k])) / row[k] : 0;
            power += solution[k] * solution[k];
        }

        for (var k = count - 1; k >= 0; k--)
        {
            for (var later = k + 1; later < count; later++)
            {
                solution[k] -= gram[(later * mostColumns) + k] * solution[later];
            }

            var diagonal = Row(k)[k];
            solution[k] = diagonal > 0 ? solution[k] / diagonal : 0;
        }

        return power;
    }

    private static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var left = MemoryMarshal.Cast<double, Vector128<double>>(a);
        var right = MemoryMarshal.Cast<double, Vector128<double>>(b);
        Vector128<double> even = default, odd = default;
        var n = 0;
        for (; n + 1 < left.Length; n += 2)
        {
            even += left[n] * right[n];
            odd += left[n + 1] * right[n + 1];
        }

        for (; n < left.Length; n++)
        {
            even += left[n] * right[n];
        }

        var rest = (a.Length & 1) == 0 ? 0 : a[^1] * b[^1];
        return Vector128.Sum(even + odd) + rest;
    }
}
