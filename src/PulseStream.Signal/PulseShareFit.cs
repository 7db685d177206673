namespace PulseStream.Signal;

/// <summary>
/// Reads the shares that two lights have of a laid-out pulse together with how the movement beside it goes on: the movement
/// counts least where it is large, and none of the pulse is taken for movement.
/// </summary>
/// <remarks>
/// Source: generalised least squares (A. C. Aitken, Proc R Soc Edinb 1936;55:42, from memory), shares and movement improved together by
/// Gauss and Newton's steps, of which the movement's part is gone by partial regression (Frisch, Waugh, Econometrica 1933;1:387).
/// The variance where the movement is uneven: H. White, Econometrica 1980;48:817, from memory.
/// </remarks>
internal sealed class PulseShareFit(SignalDesign design, MovementModel movement)
{
    // Each step leaves a small part of what is missing; after four it is less than chance.
    private const int Steps = 4;

    // A step that goes too far is taken back by half, as long as that may matter.
    private const int Halvings = 4;
    private readonly double[] pairsLeft = new double[2 * design.LongestWindowBins];
    private readonly double[] white = new double[2 * design.LongestWindowBins];
    private readonly double[] left = new double[2 * design.LongestWindowBins];
    private readonly double[] inInfrared = new double[2 * design.LongestWindowBins];
    private readonly double[] inRed = new double[2 * design.LongestWindowBins];

    /// <summary>Shares of a window.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="pulse">The laid-out pulse as the second of each pair.</param>
    /// <param name="start">Shares to begin with.</param>
    /// <param name="logLikelihood">Logarithm of the window's likelihood with the shares that are returned, but for a constant.</param>
    public PulseShares Read(ReadOnlySpan<double> pairs, ReadOnlySpan<double> pulse, PulseShares start, out double logLikelihood)
    {
        var rest = pairsLeft.AsSpan(0, pairs.Length);
        var shares = start;
        start.Leave(pairs, pulse, rest);
        movement.Learn(rest);
        logLikelihood = movement.LogLikelihood;
        for (var step = 0; step < Steps; step++)
        {
            var next = Improve(pulse, shares);
            for (var halving = 0; halving < Halvings; halving++)
            {
                next.Leave(pairs, pulse, rest);
                movement.Learn(rest);
                if (movement.LogLikelihood >= logLikelihood)
                {
                    break;
                }

                next = next with { Infrared = 0.5 * (shares.Infrared + next.Infrared), Red = 0.5 * (shares.Red + next.Red) };
            }

            if (!(movement.LogLikelihood >= logLikelihood))
            {
                return next with { Infrared = shares.Infrared, Red = shares.Red };
            }

            shares = next;
            logLikelihood = movement.LogLikelihood;
        }

        var points = WhitePoints(rest, left);
        return shares with
        {
            InfraredVariance = Math.Max(shares.InfraredVariance, UnevenVariance(points, inInfrared)),
            OwnRedVariance = Math.Max(shares.OwnRedVariance, UnevenVariance(points, inRed)),
        };
    }

    // A movement that has just begun is larger than on the mean of the window where it is, and counts there for more.
    private static double UnevenVariance(ReadOnlySpan<double> left, ReadOnlySpan<double> pulse)
    {
        double power = 0, uneven = 0;
        for (var n = 0; n < left.Length; n++)
        {
            power += pulse[n] * pulse[n];
            uneven += pulse[n] * pulse[n] * left[n] * left[n];
        }

        return uneven / (power * power);
    }

    private PulseShares Improve(ReadOnlySpan<double> pulse, in PulseShares shares)
    {
        var one = pairsLeft.AsSpan(0, pulse.Length);
        var e = WhitePoints(one, left);
        PutPulse(pulse, 0, one);
        var a = WhitePoints(one, inInfrared);
        PutPulse(pulse, 1, one);
        var b = WhitePoints(one, inRed);
        movement.TakeAway(a);
        movement.TakeAway(b);
        var aa = Projection.Dot(a, a);
        var ab = Projection.Dot(a, b);
        var bb = Projection.Dot(b, b);
        var ae = Projection.Dot(a, e);
        var be = Projection.Dot(b, e);
        var determinant = (aa * bb) - (ab * ab);
        return new(
            shares.Infrared + (((bb * ae) - (ab * be)) / determinant),
            shares.Red + (((aa * be) - (ab * ae)) / determinant),
            bb / determinant,
            -ab / bb,
            1 / bb);
    }

    private static void PutPulse(ReadOnlySpan<double> pulse, int light, Span<double> pairs)
    {
        pairs.Clear();
        for (var n = 0; n < pulse.Length; n += 2)
        {
            pairs[n + light] = pulse[n + 1];
        }
    }

    // Infrared's points, then red's.
    private Span<double> WhitePoints(ReadOnlySpan<double> pairs, Span<double> points)
    {
        var window = white.AsSpan(0, pairs.Length);
        movement.Whiten(pairs, window);
        for (var n = 0; n < movement.PointCount; n++)
        {
            var place = 2 * (movement.LeadBins + (n * movement.PointBins));
            points[n] = window[place];
            points[movement.PointCount + n] = window[place + 1];
        }

        return points[..(2 * movement.PointCount)];
    }
}
