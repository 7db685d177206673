namespace PulseStream.Signal;

/// <summary>The parabola through a maximum of equidistant values and its neighbours.</summary>
internal static class Parabola
{
    /// <summary>Place of its top; the maximum itself where it has none.</summary>
    /// <param name="values">Equidistant values.</param>
    /// <param name="n">Place of a maximum that has two neighbours.</param>
    public static double TopNear(ReadOnlySpan<double> values, int n)
    {
        var curve = values[n - 1] - (2 * values[n]) + values[n + 1];
        return curve < 0 ? n + (0.5 * (values[n - 1] - values[n + 1]) / curve) : n;
    }

    /// <summary>Height of its top.</summary>
    /// <param name="values">Equidistant values.</param>
    /// <param name="n">Place of a maximum that has two neighbours.</param>
    public static double HeightNear(ReadOnlySpan<double> values, int n) =>
        values[n] - (0.25 * (values[n - 1] - values[n + 1]) * (TopNear(values, n) - n));
}
