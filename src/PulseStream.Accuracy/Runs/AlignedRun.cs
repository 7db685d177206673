namespace PulseStream.Accuracy.Runs;

/// <summary>One run of a device beside a reference, aligned and sampled at plateaus of the reference.</summary>
/// <param name="Lag">By how much the device came later.</param>
/// <param name="Pairs">One for each plateau: the means over it.</param>
public sealed record AlignedRun(Lag Lag, IReadOnlyList<PairedReading> Pairs)
{
    // What a device did not show for longer belongs to no mean.
    private const double LeastShown = 0.8;

    /// <summary>Aligns and samples a run.</summary>
    /// <param name="subject">Whose run.</param>
    /// <param name="device">What the device showed.</param>
    /// <param name="reference">What the reference showed.</param>
    /// <param name="rule">When the reference is steady.</param>
    public static AlignedRun Of(string subject, TimedValues device, TimedValues reference, PlateauRule rule)
    {
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(rule);
        var lag = Lag.Of(device, reference);
        var pairs = new List<PairedReading>();
        var t = Math.Ceiling(reference.Times[0]);
        while (t + rule.Seconds - 1 <= reference.Times[^1])
        {
            var seconds = Enumerable.Range(0, (int)rule.Seconds).Select(i => t + i).ToArray();
            if (PairAt(subject, device, reference, seconds, lag.Seconds, rule) is { } pair)
            {
                pairs.Add(pair);
                t += rule.Seconds;
            }
            else
            {
                t++;
            }
        }

        return new(lag, pairs);
    }

    private static PairedReading? PairAt(string subject, TimedValues device, TimedValues reference, double[] seconds, double lag, PlateauRule rule)
    {
        var expected = seconds.Select(reference.At).ToArray();
        if (!(expected.Max() - expected.Min() <= rule.Spread) || expected.Any(double.IsNaN))
        {
            return null;
        }

        var shown = seconds.Select(second => device.At(second + lag)).Where(value => !double.IsNaN(value)).ToArray();
        return shown.Length >= LeastShown * seconds.Length ? new(subject, expected.Average(), shown.Average()) : null;
    }
}
