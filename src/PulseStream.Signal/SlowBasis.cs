using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>
/// What breathing and baseline can look like in a window: cosines up to a frequency and a cubic, made orthonormal.
/// Taking their least-squares fit away leaves less than 2 % of anything up to 0.3 Hz and most of a pulse,
/// with no delay and no memory of what was before the window.
/// </summary>
/// <remarks>Source: the partial regression theorem (Frisch, Waugh, Econometrica 1933;1:387), with polynomials beside cosines so that a trend does not end in a step.</remarks>
internal sealed class SlowBasis
{
    private const int PolynomialDegree = 3;
    private readonly double[] rows;

    public SlowBasis(int length, double slowestHz, double rateHz)
    {
        Length = length;
        var columns = Columns(length, (int)Math.Floor((2 * slowestHz * length / rateHz) + 1e-9));
        Count = columns.Count;
        rows = new double[length * Count];
        for (var k = 0; k < Count; k++)
        {
            for (var n = 0; n < length; n++)
            {
                rows[(n * Count) + k] = columns[k][n];
            }
        }
    }

    /// <summary>Samples in the window.</summary>
    public int Length { get; }

    /// <summary>Degrees of freedom taken away.</summary>
    public int Count { get; }

    /// <summary>Takes the slow part away from two interleaved channels in place.</summary>
    /// <param name="pairs">Infrared and red in turn, 2 × <see cref="Length"/> values.</param>
    /// <param name="sums">Room for <see cref="Count"/> sums.</param>
    public void Remove(Span<double> pairs, Span<Vector128<double>> sums)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        sums = sums[..Count];
        sums.Clear();
        for (var n = 0; n < lanes.Length; n++)
        {
            var value = lanes[n];
            var row = rows.AsSpan(n * Count, Count);
            for (var k = 0; k < row.Length && k < sums.Length; k++)
            {
                sums[k] += value * row[k];
            }
        }

        for (var n = 0; n < lanes.Length; n++)
        {
            var value = lanes[n];
            var row = rows.AsSpan(n * Count, Count);
            for (var k = 0; k < row.Length && k < sums.Length; k++)
            {
                value -= sums[k] * row[k];
            }

            lanes[n] = value;
        }
    }

    private static List<double[]> Columns(int length, int highestCosine)
    {
        var columns = new List<double[]>();
        for (var k = 0; k <= highestCosine; k++)
        {
            AddOrthonormal(columns, length, x => Math.Cos(Math.PI * k * (x + 1) / 2));
        }

        for (var degree = 1; degree <= PolynomialDegree; degree++)
        {
            AddOrthonormal(columns, length, x => Math.Pow(x, degree));
        }

        return columns;
    }

    // Gram-Schmidt, twice, because the cubic is nearly a sum of the cosines.
    private static void AddOrthonormal(List<double[]> columns, int length, Func<double, double> shape)
    {
        var column = new double[length];
        for (var n = 0; n < length; n++)
        {
            column[n] = shape((2 * (n + 0.5) / length) - 1);
        }

        for (var pass = 0; pass < 2; pass++)
        {
            foreach (var earlier in columns)
            {
                var share = Dot(column, earlier);
                for (var n = 0; n < length; n++)
                {
                    column[n] -= share * earlier[n];
                }
            }

            var norm = Math.Sqrt(Dot(column, column));
            for (var n = 0; n < length; n++)
            {
                column[n] /= norm;
            }
        }

        columns.Add(column);
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var n = 0; n < a.Length; n++)
        {
            sum += a[n] * b[n];
        }

        return sum;
    }
}
