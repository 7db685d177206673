namespace PulseStream.Signal;

/// <summary>How much likelier a window becomes by a beat of the calm pulse at each place of it, its movement being what it is.</summary>
/// <remarks>Source: the matched filter in coloured noise (J. H. Van Vleck, D. Middleton, J Appl Phys 1946;17:940, from memory): both are made white first.</remarks>
internal sealed class BeatGain
{
    private readonly int longest;
    private readonly double[] white;
    private readonly double[] row;
    private readonly double[] beat;
    private readonly double[] gains;

    public BeatGain(SignalDesign design)
    {
        longest = design.LongestWindowBins;
        white = new double[2 * longest];
        row = new double[2 * (longest + PulseTemplate.LongestBeatBins(design))];
        beat = new double[row.Length];
        gains = new double[longest + PulseTemplate.LongestBeatBins(design)];
    }

    /// <summary>Place of the first beat, bins: it ends where the window begins.</summary>
    public int FirstPlace { get; private set; }

    /// <summary>Logarithm of the likelihood's growth by a beat whose first point is at <see cref="FirstPlace"/> and each later bin.</summary>
    public ReadOnlySpan<double> Gains => gains.AsSpan(0, Count);

    private int Count { get; set; }

    /// <summary>Measures a window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="movement">Its movement.</param>
    /// <param name="calm">The calm pulse.</param>
    public void Measure(ReadOnlySpan<double> pairs, MovementModel movement, PulseTemplate calm)
    {
        var bins = pairs.Length / 2;
        var length = WhitenBeat(movement, calm);
        movement.Whiten(pairs, white);
        FirstPlace = -length;
        Count = bins + length;
        var shape = beat.AsSpan(2 * movement.LeadBins, 2 * length);
        for (var place = 0; place < Count; place++)
        {
            var start = place - length;
            var from = Math.Max(0, movement.LeadBins - start);
            var seen = 2 * (Math.Min(length, bins - start) - from);
            gains[place] = seen > 0 ? Gain(shape.Slice(2 * from, seen), white.AsSpan(2 * (start + from), seen)) / movement.PointBins : 0;
        }
    }

    private static double Gain(ReadOnlySpan<double> beat, ReadOnlySpan<double> window) =>
        Projection.Dot(beat, window) - (0.5 * Projection.Dot(beat, beat));

    // Before a beat comes another one: it is told from that one's end.
    private int WhitenBeat(MovementModel movement, PulseTemplate calm)
    {
        var points = calm.Beat;
        var lead = movement.LeadBins;
        var pairs = row.AsSpan(0, 2 * (points.Length + lead));
        for (var n = 0; n < points.Length + lead; n++)
        {
            var back = (n - lead) % points.Length;
            pairs[2 * n] = points[back < 0 ? back + points.Length : back];
            pairs[(2 * n) + 1] = calm.Ratio * pairs[2 * n];
        }

        movement.Whiten(pairs, beat);
        return points.Length;
    }
}
