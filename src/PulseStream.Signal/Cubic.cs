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
        var f = inside - n;
        var a = values[(n - 1) * stride];
        var b = values[n * stride];
        var c = values[(n + 1) * stride];
        var d = values[(n + 2) * stride];
        return b + (0.5 * f * (c - a + (f * ((2 * a) - (5 * b) + (4 * c) - d + (f * ((3 * (b - c)) + d - a))))));
    }
}
