namespace PulseStream.Simulation.Chance;

/// <summary>
/// A smooth random course over time, mean 0, deviation 1: random knots at even distances, joined by Catmull-Rom cubics.
/// Its band ends near half the knots' rate, whatever the sample rate.
/// </summary>
internal readonly struct SmoothNoise(SplitMix chance, double knotSeconds)
{
    // Mean over a span of the four squared Catmull-Rom weights is 57/70: interpolation shrinks the knots' deviation by its root.
    private const double InterpolatedDeviation = 0.902378;

    /// <summary>The course at a time.</summary>
    public double At(double seconds)
    {
        var position = seconds / knotSeconds;
        var knot = (long)Math.Floor(position);
        var u = position - knot;
        double a = chance.Bell(knot - 1), b = chance.Bell(knot), c = chance.Bell(knot + 1), d = chance.Bell(knot + 2);
        var value = b + (0.5 * u * (c - a + (u * ((2 * a) - (5 * b) + (4 * c) - d + (u * ((3 * (b - c)) + d - a))))));
        return value / InterpolatedDeviation;
    }
}
