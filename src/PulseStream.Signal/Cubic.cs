namespace PulseStream.Signal;

/// <summary>Values between bins.</summary>
/// <remarks>Source: E. Catmull, R. Rom, A class of local interpolating splines, 1974 (from memory).</remarks>
internal static class Cubic
{
    /// <summary>Value at a place between bins; none beyond the second and the last but one.</summary>
    /// <param name="values">At least four values, each <paramref name="stride"/> apart.</param>
    /// <param name="stride">Distance of neighbouring values in the span.</param>
    /// <param name="place">Place in bins.</param>
    public static double At(ReadOnlySpan<double> values, int stride, double place)
    {
        var count = (values.Length + stride - 1) / stride;
        var inside = Math.Clamp(place, 1, count - 2);
        var n = Math.Min((int)inside, count - 3);
        var (a, b, c, d) = Weights(inside - n);
        return (a * values[(n - 1) * stride]) + (b * values[n * stride]) + (c * values[(n + 1) * stride]) + (d * values[(n + 2) * stride]);
    }

    /// <summary>Weights of the bin before, the two around and the bin behind a place.</summary>
    /// <param name="share">Way from the first of the two around to the second, 0 to 1.</param>
    public static (double Before, double From, double To, double Behind) Weights(double share)
    {
        var square = share * share;
        var cube = square * share;
        return (
            0.5 * (-share + (2 * square) - cube),
            0.5 * (2 - (5 * square) + (3 * cube)),
            0.5 * (share + (4 * square) - (3 * cube)),
            0.5 * (cube - square));
    }
}
