namespace PulseStream.Signal;

/// <summary>Reads the shares that two lights have of a laid-out pulse: least squares once the movement has been made white, so that it counts least where it is large.</summary>
/// <remarks>Source: generalised least squares (A. C. Aitken, Proc R Soc Edinb 1936;55:42), the colour from what is left (D. Cochrane, G. H. Orcutt, J Am Stat Assoc 1949;44:32); both from memory.</remarks>
internal sealed class PulseShareFit(SignalDesign design)
{
    private readonly double[] one = new double[2 * design.LongestWindowBins];
    private readonly double[] window = new double[2 * design.LongestWindowBins];
    private readonly double[] inInfrared = new double[2 * design.LongestWindowBins];
    private readonly double[] inRed = new double[2 * design.LongestWindowBins];

    /// <summary>Shares of a window.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="pulse">The laid-out pulse as the second of each pair.</param>
    /// <param name="movement">The movement.</param>
    public PulseShares Read(ReadOnlySpan<double> pairs, ReadOnlySpan<double> pulse, MovementModel movement)
    {
        var length = pairs.Length;
        var y = window.AsSpan(0, length);
        var a = inInfrared.AsSpan(0, length);
        var b = inRed.AsSpan(0, length);
        movement.Whiten(pairs, y);
        WhitenPulse(pulse, 0, movement, a);
        WhitenPulse(pulse, 1, movement, b);

        var aa = Projection.Dot(a, a) / movement.PointBins;
        var ab = Projection.Dot(a, b) / movement.PointBins;
        var bb = Projection.Dot(b, b) / movement.PointBins;
        var ay = Projection.Dot(a, y) / movement.PointBins;
        var by = Projection.Dot(b, y) / movement.PointBins;
        var determinant = (aa * bb) - (ab * ab);
        return new(((bb * ay) - (ab * by)) / determinant, ((aa * by) - (ab * ay)) / determinant, bb / determinant, -ab / bb, 1 / bb);
    }

    private void WhitenPulse(ReadOnlySpan<double> pulse, int light, MovementModel movement, Span<double> white)
    {
        var pairs = one.AsSpan(0, pulse.Length);
        pairs.Clear();
        for (var n = 0; n < pulse.Length; n += 2)
        {
            pairs[n + light] = pulse[n + 1];
        }

        movement.Whiten(pairs, white);
    }
}
