namespace PulseStream.Signal;

/// <summary>Takes what one shape explains out of another.</summary>
internal static class Projection
{
    /// <summary>Σ of products.</summary>
    /// <param name="a">Values.</param>
    /// <param name="b">As many values.</param>
    public static double Dot(ReadOnlySpan<double> a, ReadOnlySpan<double> b)
    {
        var sum = 0.0;
        for (var n = 0; n < a.Length; n++)
        {
            sum += a[n] * b[n];
        }

        return sum;
    }

    /// <summary>Takes the share of a shape of power 1 away.</summary>
    /// <param name="values">Changed in place.</param>
    /// <param name="unit">The shape, as many values.</param>
    public static void Subtract(Span<double> values, ReadOnlySpan<double> unit)
    {
        var share = Dot(values, unit);
        for (var n = 0; n < values.Length; n++)
        {
            values[n] -= share * unit[n];
        }
    }
}
