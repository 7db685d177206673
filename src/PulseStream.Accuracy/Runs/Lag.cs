namespace PulseStream.Accuracy.Runs;

/// <summary>By how much a device comes later than a reference.</summary>
/// <param name="Seconds">Above 0 where the device is the later one; 0 where it cannot be told.</param>
/// <param name="IsKnown">Whether the courses tell it: something has to change in both.</param>
public sealed record Lag(double Seconds, bool IsKnown)
{
    // Blood takes half a minute from the ear to a toe, an average of values as long again, and clocks are set by hand.
    private const int FarthestSeconds = 90;

    private const int FewestSeconds = 60;

    // Of the most seconds that both courses share at any lag: where they hardly overlap, whatever is left fits.
    private const double LeastOverlap = 0.5;

    // A course that hardly moves fits everywhere.
    private const double LeastMovement = 1.0;

    // Elsewhere the scatter is by so much larger, or the least of it means nothing.
    private const double LeastGain = 1.05;

    /// <summary>
    /// The lag at which the differences scatter least, for as much as both courses move where they overlap; a constant
    /// difference does not matter. Between whole seconds by the parabola through three of them.
    /// </summary>
    /// <param name="device">The device.</param>
    /// <param name="reference">The reference.</param>
    public static Lag Of(TimedValues device, TimedValues reference)
    {
        ArgumentNullException.ThrowIfNull(device);
        ArgumentNullException.ThrowIfNull(reference);
        var scatter = ScatterByLag(device, reference);
        var best = Array.IndexOf(scatter, scatter.Where(value => !double.IsNaN(value)).DefaultIfEmpty(double.NaN).Min());
        if (best <= 0 || best >= scatter.Length - 1 || double.IsNaN(scatter[best]) || !Moves(reference) || !(scatter.Max() > LeastGain * scatter[best]))
        {
            return new(0, IsKnown: false);
        }

        return new(best - FarthestSeconds + Between(scatter[best - 1], scatter[best], scatter[best + 1]), IsKnown: true);
    }

    private static double[] ScatterByLag(TimedValues device, TimedValues reference)
    {
        var overlaps = Enumerable.Range(-FarthestSeconds, (2 * FarthestSeconds) + 1).Select(lag => Overlap.At(device, reference, lag)).ToArray();
        var fewest = Math.Max(FewestSeconds, LeastOverlap * overlaps.Max(overlap => overlap.Seconds));
        return [.. overlaps.Select(overlap => overlap.Seconds >= fewest ? overlap.Scatter : double.NaN)];
    }

    private static bool Moves(TimedValues course)
    {
        var mean = course.Values.Average();
        return Math.Sqrt(course.Values.Average(value => Math.Pow(value - mean, 2))) > LeastMovement;
    }

    private static double Between(double before, double at, double after)
    {
        var bend = before - (2 * at) + after;
        return bend > 0 ? Math.Clamp((before - after) / (2 * bend), -0.5, 0.5) : 0;
    }
}
