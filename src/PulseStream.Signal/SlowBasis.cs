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
    private const int ShapesPerGroup = 3;
    private readonly SlowRow[][] groups;

    public SlowBasis(int length, double slowestHz, double rateHz)
    {
        Length = length;
        var columns = Columns(length, (int)Math.Floor((2 * slowestHz * length / rateHz) + 1e-9));
        Count = columns.Count;
        groups = Groups(columns, length);
    }

    /// <summary>Samples in the window.</summary>
    public int Length { get; }

    /// <summary>Degrees of freedom taken away.</summary>
    public int Count { get; }

    /// <summary>The shapes by threes of each kind; each group has a row for each place up to the middle.</summary>
    public ReadOnlySpan<SlowRow[]> GroupsOfShapes => groups;

    /// <summary>Takes the slow part away from two interleaved channels in place.</summary>
    /// <param name="pairs">Infrared and red in turn, 2 × <see cref="Length"/> values.</param>
    public void Remove(Span<double> pairs)
    {
        // Shapes are orthonormal: what one group takes away is none of the next one's.
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        foreach (var rows in groups)
        {
            SlowShares.Of(lanes, rows).Remove(lanes, rows);
        }
    }

    // A shape that is even about the middle has nothing in common with an odd one, so each needs half a window only.
    private static SlowRow[][] Groups(List<double[]> columns, int length)
    {
        var even = columns.Where(column => IsEven(column)).ToArray();
        var odd = columns.Where(column => !IsEven(column)).ToArray();
        var count = (Math.Max(even.Length, odd.Length) + ShapesPerGroup - 1) / ShapesPerGroup;
        return [.. Enumerable.Range(0, count).Select(group => Enumerable.Range(0, (length + 1) / 2).Select(n => RowAt(group * ShapesPerGroup, n)).ToArray())];

        SlowRow RowAt(int k, int n)
        {
            // The middle is met from both sides: half of it each time, and nothing of what changes sign there.
            var isMiddle = (2 * n) + 1 == length;
            return new(EvenAt(k), EvenAt(k + 1), EvenAt(k + 2), OddAt(k), OddAt(k + 1), OddAt(k + 2));

            double EvenAt(int shape) => (isMiddle ? 0.5 : 1) * At(even, shape, n);
            double OddAt(int shape) => isMiddle ? 0 : At(odd, shape, n);
        }

        static double At(double[][] shapes, int k, int n) => k < shapes.Length ? shapes[k][n] : 0;
        static bool IsEven(double[] column) => column[0] * column[^1] > 0;
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
