namespace PulseStream.Signal;

/// <summary>
/// Tells the pulse in a movement: the calm one, laid out along the beats that make the window likeliest, is in infrared by its own
/// height and in red by R times that. What moves may have any number of sources, proportions and delays; how it goes on is learned
/// from what the pulse leaves, and how much it may add to either light's share of the pulse by chance follows from that.
/// </summary>
/// <remarks>The height as a share that is known beforehand is a control variate (J. M. Hammersley, D. C. Handscomb, Monte Carlo Methods, 1964, section 5.5, from memory).</remarks>
internal sealed class MotionSeparation
{
    private const int Rounds = 5;
    private const int FewestBeats = 3;

    // What is not yet known to be pulse is in the movement that is learned first, and a pulse of another R than was thought would
    // be taken away as such: white light of a tenth of its power hides it there.
    private const double UnknownPulseShare = 0.1;

    // A point and a half: beats are laid out anew for an R further from the one that they were laid out for.
    private const double OtherRatio = 0.06;
    private const int Passes = 2;

    // Chance hardly ever goes beyond three deviations, which are themselves known from eight seconds only.
    private const double ChanceDeviations = 4;

    // What keeps time with the heart has two phases of each harmonic, of which two matter most.
    private const double TimeKeepingFreedom = 4;

    // The beats' own times and their shares were fitted: as much of what keeps time is no longer in what is left.
    private const double FittedFreedom = 2;
    private readonly SignalDesign design;
    private readonly MovementModel movement;
    private readonly BeatPath path;
    private readonly PulseShareFit fit;
    private readonly double[] rest;
    private readonly double[] laidOut;
    private readonly double[] best;

    public MotionSeparation(SignalDesign design)
    {
        this.design = design;
        movement = new(design);
        path = new(design);
        fit = new(design, movement);
        rest = new double[2 * design.LongestWindowBins];
        laidOut = new double[rest.Length];
        best = new double[rest.Length];
    }

    /// <summary>Separates one window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="basis">The slow part that was removed.</param>
    /// <param name="calm">The calm pulse.</param>
    /// <param name="separated">What came of it.</param>
    /// <returns>Whether there is a pulse in it for sure that may be the calm one: as high, but for what the movement adds by chance.</returns>
    public bool TrySeparate(ReadOnlySpan<double> pairs, SlowBasis basis, PulseTemplate calm, out SeparatedPulse separated)
    {
        separated = default;
        var ratio = calm.Ratio;
        var likelier = default(PulseShares);
        for (var pass = 0; pass < Passes; pass++)
        {
            if (!(LayOutBeats(pairs, basis, calm, ratio) > design.Options.LeastBeatLikelihood))
            {
                return pass > 0 && IsHeight(likelier);
            }

            // Where the pulse has another R than was thought, what is missing from it may pass for movement: another beginning shows that.
            var pulse = best.AsSpan(0, pairs.Length);
            var kept = fit.Read(pairs, pulse, new(1, ratio), out var ofKept);
            var free = fit.Read(pairs, pulse, PulseShares.Plain(pairs, pulse), out var ofFree);
            separated = Judge(kept, calm.HeightSpread).Or(Judge(free, calm.HeightSpread), 1 / (1 + Math.Exp(ofKept - ofFree)));
            likelier = ofFree > ofKept ? free : kept;
            if (Math.Abs(separated.Ratio - ratio) < OtherRatio)
            {
                break;
            }

            ratio = separated.Ratio;
        }

        return IsHeight(likelier);
    }

    /// <summary>Leaves the pulse of the window separated last: along its beats in infrared's calm height, and R times it.</summary>
    /// <param name="ratio">R.</param>
    /// <param name="pairs">Where it is left, infrared and red in turn.</param>
    public void CopyPulse(double ratio, Span<double> pairs)
    {
        for (var n = 0; n < pairs.Length; n += 2)
        {
            pairs[n] = best[n + 1];
            pairs[n + 1] = ratio * best[n + 1];
        }
    }

    // With the calm height h = 1 ± spread: infrared's share is h + m, red's R h + slope m + k, where m and k are chance of known
    // variances. Of red − w (infrared − 1) the error is (R − w) (h − 1) + (slope − w) m + k, least for the weight w that follows.
    private static SeparatedPulse Judge(in PulseShares found, double spread)
    {
        var excess = found.Infrared - 1;
        var height = spread * spread;

        // Of what keeps time with the heart, the phase that the pulse has is in infrared's share; red's own is not known.
        var infrared = found.InfraredVariance + (excess * excess / TimeKeepingFreedom);
        var own = found.OwnRedVariance * TimeKeepingFreedom / (TimeKeepingFreedom - FittedFreedom);
        var share = infrared / (height + infrared);
        var ratio = (found.Red - (excess * found.Slope * share)) / (1 + (excess * (1 - share)));
        var weight = (ratio * (1 - share)) + (found.Slope * share);
        var variance = ((ratio - weight) * (ratio - weight) * height) + ((found.Slope - weight) * (found.Slope - weight) * infrared) + own;
        return new(ratio, Math.Sqrt(variance));
    }

    private bool IsHeight(in PulseShares shares) =>
        Math.Abs(shares.Infrared - 1) < design.Options.LargestOtherHeight + (ChanceDeviations * Math.Sqrt(shares.InfraredVariance));

    // The movement is what the pulse leaves, and the pulse is found beside the movement: each tells more of the other in the next
    // round. Leaves the likeliest round's pulse in 'best'.
    private double LayOutBeats(ReadOnlySpan<double> pairs, SlowBasis basis, PulseTemplate calm, double ratio)
    {
        var likelihood = double.NegativeInfinity;
        var left = rest.AsSpan(0, pairs.Length);
        var pulse = laidOut.AsSpan(0, pairs.Length);
        pairs.CopyTo(left);
        for (var round = 0; round < Rounds; round++)
        {
            movement.Learn(left, round == 0 ? UnknownPulseShare * calm.Size * calm.Size : 0);
            path.Find(pairs, movement, calm, ratio);
            if (path.Count < FewestBeats)
            {
                break;
            }

            calm.LayOut(path.Rises, pulse);
            basis.Remove(pulse);
            if (path.Likelihood > likelihood)
            {
                likelihood = path.Likelihood;
                pulse.CopyTo(best);
            }

            new PulseShares(1, ratio).Leave(pairs, pulse, left);
        }

        return likelihood;
    }
}
