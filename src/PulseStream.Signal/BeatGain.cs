namespace PulseStream.Signal;

/// <summary>How much likelier a window becomes by a beat of the calm pulse at each place of it that lasts until the next, its movement being what it is.</summary>
/// <remarks>Source: the matched filter in coloured noise (J. H. Van Vleck, D. Middleton, J Appl Phys 1946;17:940, from memory): both are made white first.</remarks>
internal sealed class BeatGain
{
    private readonly double[] white;
    private readonly double[] row;
    private readonly double[] beat;
    private readonly double[] gains;
    private int shortest;
    private int length;

    public BeatGain(SignalDesign design)
    {
        var longestBeat = PulseTemplate.LongestBeatBins(design);
        white = new double[2 * design.LongestWindowBins];
        row = new double[2 * (design.LongestWindowBins + longestBeat)];
        beat = new double[row.Length];
        gains = new double[(design.LongestWindowBins + longestBeat) * longestBeat];
    }

    /// <summary>Places where a beat may begin: the first of them ends where the window begins, the last begins where it ends.</summary>
    public int Places { get; private set; }

    /// <summary>Bin of the window at which a beat of the first place begins; below 0.</summary>
    public int FirstBin => -length;

    /// <summary>Logarithm of the likelihood's growth by a beat.</summary>
    /// <param name="place">Where it begins.</param>
    /// <param name="interval">Bins until the next; a beat is no longer than what is known of it.</param>
    public double Of(int place, int interval) => gains[(place * Width) + Math.Min(interval, length) - shortest];

    /// <summary>The same of a beat with nothing behind it.</summary>
    /// <param name="place">Where it begins.</param>
    public double Of(int place) => Of(place, length);

    private int Width => length - shortest + 1;

    /// <summary>Measures a window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="movement">Its movement.</param>
    /// <param name="calm">The calm pulse.</param>
    /// <param name="ratio">R of the pulse.</param>
    /// <param name="shortestInterval">Shortest interval that is asked for, bins.</param>
    public void Measure(ReadOnlySpan<double> pairs, MovementModel movement, PulseTemplate calm, double ratio, int shortestInterval)
    {
        var bins = pairs.Length / 2;
        WhitenBeat(movement, calm.Beat, ratio);
        movement.Whiten(pairs, white);
        length = calm.Beat.Length;
        shortest = Math.Min(shortestInterval, length);
        Places = bins + length;
        var shape = beat.AsSpan(2 * movement.LeadBins, 2 * length);
        for (var place = 0; place < Places; place++)
        {
            Measure(shape, place - length, movement.LeadBins, Math.Min(length, bins - place + length), 1.0 / movement.PointBins, gains.AsSpan(place * Width, Width));
        }
    }

    private void Measure(ReadOnlySpan<double> shape, int start, int lead, int end, double scale, Span<double> ofIntervals)
    {
        var sum = 0.0;
        var n = Math.Max(0, lead - start);
        for (var interval = 0; interval < ofIntervals.Length; interval++)
        {
            for (; n < end && n < shortest + interval; n++)
            {
                var place = 2 * (start + n);
                sum += (shape[2 * n] * (white[place] - (0.5 * shape[2 * n]))) + (shape[(2 * n) + 1] * (white[place + 1] - (0.5 * shape[(2 * n) + 1])));
            }

            ofIntervals[interval] = scale * sum;
        }
    }

    // Before a beat comes another one: it is told from that one's end.
    private void WhitenBeat(MovementModel movement, ReadOnlySpan<double> points, double ratio)
    {
        var lead = movement.LeadBins;
        var pairs = row.AsSpan(0, 2 * (points.Length + lead));
        for (var n = 0; n < points.Length + lead; n++)
        {
            var back = (n - lead) % points.Length;
            pairs[2 * n] = points[back < 0 ? back + points.Length : back];
            pairs[(2 * n) + 1] = ratio * pairs[2 * n];
        }

        movement.Whiten(pairs, beat);
    }
}
