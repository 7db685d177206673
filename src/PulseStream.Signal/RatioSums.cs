using System.Runtime.InteropServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Sums over a window from which the regression of red on infrared follows, with time running from −1 to 1.</summary>
/// <param name="Infrared">Σ i².</param>
/// <param name="Red">Σ r².</param>
/// <param name="Cross">Σ r i.</param>
/// <param name="InfraredTime">Σ t i².</param>
/// <param name="InfraredTime2">Σ t² i².</param>
/// <param name="CrossTime">Σ t r i.</param>
internal readonly record struct RatioSums(double Infrared, double Red, double Cross, double InfraredTime, double InfraredTime2, double CrossTime)
{
    /// <summary>Σ of squares of what the regression leaves of red.</summary>
    public double Rest => Red - (Cross * Cross / Infrared);

    /// <summary>Sums of interleaved infrared and red.</summary>
    /// <remarks>Places at the same distance from the middle are taken together: their time differs by its sign alone.</remarks>
    /// <param name="pairs">Infrared and red in turn.</param>
    public static RatioSums Over(ReadOnlySpan<double> pairs)
    {
        var lanes = MemoryMarshal.Cast<double, Vector128<double>>(pairs);
        Vector128<double> earlySquares = default, lateSquares = default, products = default, productsTime = default, productsTime2 = default;
        var step = 2.0 / lanes.Length;
        var time = Vector128.Create(-1 + (step / 2));
        var half = lanes.Length / 2;
        for (var n = 0; n < half; n++)
        {
            var early = lanes[n];
            var late = lanes[lanes.Length - 1 - n];

            // i² and r i of either place.
            var earlyProducts = early * Vector128.Create(early.ToScalar());
            var lateProducts = late * Vector128.Create(late.ToScalar());
            var sum = earlyProducts + lateProducts;
            earlySquares = Vector128.FusedMultiplyAdd(early, early, earlySquares);
            lateSquares = Vector128.FusedMultiplyAdd(late, late, lateSquares);
            products += sum;
            productsTime = Vector128.FusedMultiplyAdd(earlyProducts - lateProducts, time, productsTime);
            productsTime2 = Vector128.FusedMultiplyAdd(sum * time, time, productsTime2);
            time += Vector128.Create(step);
        }

        if (lanes.Length % 2 != 0)
        {
            var middle = lanes[half];
            earlySquares = Vector128.FusedMultiplyAdd(middle, middle, earlySquares);
            products += middle * Vector128.Create(middle.ToScalar());
        }

        var squares = earlySquares + lateSquares;
        return new(squares[0], squares[1], products[1], productsTime[0], productsTime2[0], productsTime[1]);
    }

    /// <summary>The steady and the moving fit.</summary>
    public RatioSolution Solve()
    {
        var ratio = Infrared > 0 ? Cross / Infrared : 0;
        var steady = Red - (ratio * Cross);
        var determinant = (Infrared * InfraredTime2) - (InfraredTime * InfraredTime);
        if (!(determinant > 1e-12 * Infrared * Infrared))
        {
            return new(ratio, steady, ratio, 0, steady);
        }

        var middle = ((Cross * InfraredTime2) - (CrossTime * InfraredTime)) / determinant;
        var drift = ((Infrared * CrossTime) - (InfraredTime * Cross)) / determinant;
        return new(ratio, steady, middle, drift, Red - (middle * Cross) - (drift * CrossTime));
    }
}
