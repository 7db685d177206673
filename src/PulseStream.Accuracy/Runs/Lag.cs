namespace PulseStream.Accuracy.Runs;

/// <summary>By how much a device comes later than a reference.</summary>
/// <param name="Seconds">Above 0 where the device is the later one; 0 where it cannot be told.</param>
/// <param name="IsKnown">Whether the courses tell it: something has to change in both.</param>
public sealed record Lag(double Seconds, bool IsKnown)
{
    // Blood takes half a minute from the ear to a toe, an average of values as long again.
    private const int FarthestSeconds = 60;

    private const int FewestSeconds = 60;

    // A course that hardly moves fits everywhere.
    private const double LeastMovement = 1.0;

    // Without a lag the scatter is by so much larger, or the least of it means nothing.
    private const double LeastGain = 1.05;

    /// <summary>
    /// The lag at which the differences scatter least; a constant difference does not matter. Between whole seconds by the
    /// parabola through three of them.
    /// </summary>
    /// <param name="device">The device.</param>
    /// <param name="reference">The reference.</param>
    public static Lag Of(TimedValues device, TimedValues reference)
    {
        ArgumentNullException.ThrowIfNull(device);
        ArgumentNullException.ThrowIfNull(reference);
        var scatter = Enumerable.Range(-FarthestSeconds, (2 * FarthestSeconds) + 1).Select(lag => ScatterAt(device, reference, lag)).ToArray();
        var best = Array.IndexOf(scatter, scatter.Where(value => !double.IsNaN(value)).DefaultIfEmpty(double.NaN).Min());
        if (best <= 0 || best >= scatter.Length - 1 || double.IsNaN(scatter[best]) || !Moves(reference) || !(scatter.Max() > LeastGain * scatter[best]))
        {
            return new(0, IsKnown: false);
        }

        return new(best - FarthestSeconds + Between(scatter[best - 1], scatter[best], scatter[best + 1]), IsKnown: true);
    }

    private static double ScatterAt(TimedValues device, TimedValues reference, double lag)
    {
        var (count, sum, squares) = (0, 0.0, 0.0);
        for (var t = Math.Ceiling(reference.Times[0]); t <= reference.Times[^1]; t++)
        {
            var difference = device.At(t + lag) - reference.At(t);
            if (!double.IsNaN(difference))
            {
                count++;
                sum += difference;
                squares += difference * difference;
            }
        }

        return count < FewestSeconds ? double.NaN : Math.Max(0, (squares / count) - Math.Pow(sum / count, 2));
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
