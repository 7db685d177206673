namespace PulseStream.Accuracy.Runs;

/// <summary>One run of a device beside a reference, aligned and sampled at plateaus of the reference.</summary>
/// <param name="Lag">By how much the device came later.</param>
/// <param name="Pairs">One for each plateau: the means over its second half.</param>
public sealed record AlignedRun(Lag Lag, IReadOnlyList<PairedReading> Pairs)
{
    // What a device did not show for longer belongs to no mean.
    private const double LeastShown = 0.8;

    // The first half of a plateau belongs to the device: an average over seconds still holds what was before.
    private const double SettlingShare = 0.5;

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

        var settling = (int)(SettlingShare * seconds.Length);
        var shown = seconds[settling..].Zip(expected[settling..], (second, truth) => (Truth: truth, Reading: device.At(second + lag)))
            .Where(pair => !double.IsNaN(pair.Reading)).ToArray();
        return shown.Length >= LeastShown * (seconds.Length - settling) ? new(subject, shown.Average(pair => pair.Truth), shown.Average(pair => pair.Reading)) : null;
    }
}
