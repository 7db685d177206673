namespace PulseStream.Signal;

/// <summary>How alike the beats of a window are once each is stretched to the same length.</summary>
internal sealed class StretchedBeats
{
    private const int Points = 40;
    private const int MostBeats = 64;

    // From the foot of the front to that of the next.
    private const double BeforeShare = 0.2;
    private const int FewestBeats = 3;
    private readonly BeatLikeness likeness = new(Points);
    private readonly double[] beats = new double[MostBeats * Points];
    private readonly double[] agreements = new double[MostBeats];

    /// <summary>Lower quartile of the correlations of each beat with the mean of the others, −1 to 1; NaN with fewer than three whole beats.</summary>
    /// <param name="volumes">Blood volume, slow part removed.</param>
    /// <param name="rises">Steepest rises, bins.</param>
    public double AgreementOf(ReadOnlySpan<double> volumes, ReadOnlySpan<double> rises)
    {
        var count = 0;
        likeness.Clear(Points);
        for (var k = 0; k + 1 < rises.Length; k++)
        {
            var interval = rises[k + 1] - rises[k];
            var start = rises[k] - (BeforeShare * interval);
            if (start >= 0)
            {
                var beat = beats.AsSpan(count++ * Points, Points);
                Stretch(volumes, start, interval, beat);
                likeness.Add(beat);
            }
        }

        if (count < FewestBeats)
        {
            return double.NaN;
        }

        likeness.Weigh();
        for (var k = 0; k < count; k++)
        {
            agreements[k] = likeness.Of(beats.AsSpan(k * Points, Points));
        }

        Array.Sort(agreements, 0, count);
        return agreements[(count - 1) / 4];
    }

    private static void Stretch(ReadOnlySpan<double> volumes, double start, double interval, Span<double> beat)
    {
        for (var n = 0; n < Points; n++)
        {
            var at = start + (interval * n / Points);
            var bin = (int)at;
            beat[n] = volumes[bin] + ((at - bin) * (volumes[Math.Min(bin + 1, volumes.Length - 1)] - volumes[bin]));
        }
    }
}
