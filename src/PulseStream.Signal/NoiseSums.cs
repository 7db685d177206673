using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Squares of what smoothing took away from the bins of a second, and the products of its two lights.</summary>
internal struct NoiseSums
{
    private Vector128<double> squares;
    private double products;
    private long count;

    /// <summary>Adds what was taken away from one bin, infrared and red.</summary>
    public void Add(Vector128<double> rest)
    {
        squares += rest * rest;
        products += rest[0] * rest[1];
        count++;
    }

    /// <summary>White noise of one bin.</summary>
    /// <param name="restGain">Variance of what smoothing takes away from white noise of variance 1.</param>
    public readonly WhiteNoise Over(double restGain)
    {
        var scale = 1 / (Math.Max(count, 1) * restGain);
        return new(squares[0] * scale, squares[1] * scale, products * scale);
    }

    public static NoiseSums operator +(in NoiseSums left, in NoiseSums right) => new()
    {
        squares = left.squares + right.squares,
        products = left.products + right.products,
        count = left.count + right.count,
    };
}
