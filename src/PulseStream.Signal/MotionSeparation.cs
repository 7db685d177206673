namespace PulseStream.Signal;

/// <summary>
/// Tells the pulse in a movement: the calm one, laid out along the beats, is in infrared by its own height and in red by R times
/// that. What moves may have any number of sources, proportions and delays; as long as it does not keep time with the heart
/// it adds nothing to either light's share of that pulse but chance, and how much that may be is seen in what each has left.
/// </summary>
/// <remarks>
/// The beats come from the mixture of both lights that repeats best, then from the mixture that leaves the least of the
/// movement for a pulse of the calm height (J. Capon, Proc IEEE 1969;57:1408, from memory), again and again.
/// <para>
/// R is red's share of the laid-out pulse (an instrument in the sense of J. Durbin, Rev Int Stat Inst 1954;22:23, from memory) less as
/// much of what infrared's has too much as goes with it: all that the movement's proportion makes of it where one movement reaches both
/// lights, nothing where they move on their own. The height as a share that is known beforehand is a control variate
/// (J. M. Hammersley, D. C. Handscomb, Monte Carlo Methods, 1964, section 5.5, from memory).
/// </para>
/// </remarks>
internal sealed class MotionSeparation(SignalDesign design)
{
    private const int Rounds = 3;
    private const int FewestBeats = 3;

    // A light without any movement is left this much of the pulse's power, so that the mixture stays finite.
    private const double LeastRest = 1e-4;
    // Three deviations: chance goes beyond them hardly ever.
    private const double ChanceDeviations = 3;

    // What keeps time with the heart has two phases of each harmonic, of which two matter most.
    private const double TimeKeepingFreedom = 4;
    private readonly BeatFinder finder = new(design);
    private readonly MovementChance chance = new(design);
    private readonly double[] work = new double[2 * design.LongestWindowBins];
    private readonly double[] best = new double[2 * design.LongestWindowBins];

    /// <summary>Separates one window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="basis">The slow part that was removed.</param>
    /// <param name="calm">The calm pulse.</param>
    /// <param name="separated">What came of it.</param>
    /// <returns>Whether there is a pulse in it that may be the calm one: as high, but for what the movement adds by chance.</returns>
    public bool TrySeparate(ReadOnlySpan<double> pairs, SlowBasis basis, PulseTemplate calm, out SeparatedPulse separated)
    {
        separated = default;
        var found = default(PulseShares);
        var direction = PeriodicDirection.Find(pairs, calm.PeriodBins);
        foreach (var start in (ReadOnlySpan<(double, double)>)[(direction.Infrared, direction.Red), (-direction.Infrared, -direction.Red)])
        {
            var mixture = start;
            for (var round = 0; round < Rounds && TryLayOut(pairs, basis, calm, mixture, out var shares); round++)
            {
                if (shares.Agreement > found.Agreement)
                {
                    found = shares;
                    work.AsSpan(0, pairs.Length).CopyTo(best);
                }

                mixture = MixtureWithoutMovement(pairs, shares);
            }
        }

        if (!(found.Agreement > 0))
        {
            return false;
        }

        var movement = chance.Of(pairs, best, ref found);
        separated = Judge(found, movement, calm.HeightSpread);
        return Math.Abs(found.Infrared - 1) < design.Options.LargestOtherHeight + (ChanceDeviations * Math.Sqrt(movement.Infrared));
    }

    /// <summary>Leaves the pulse of the window separated last: the mixture of its lights without the movement, in infrared's calm height, and R times it.</summary>
    /// <param name="separated">What came of it.</param>
    /// <param name="pairs">Where it is left, infrared and red in turn.</param>
    public void CopyPulse(in SeparatedPulse separated, Span<double> pairs)
    {
        for (var n = 0; n < pairs.Length; n += 2)
        {
            pairs[n] = separated.MixtureScale * best[n];
            pairs[n + 1] = separated.Ratio * pairs[n];
        }
    }

    // With the calm height h = 1 ± spread: infrared's share is h + m, red's R h + slope m + k, where m and k are chance of known
    // variances. Of red − w (infrared − 1) the error is (R − w) (h − 1) + (slope − w) m + k, least for the weight w that follows.
    private static SeparatedPulse Judge(in PulseShares found, in MovementVariance movement, double spread)
    {
        var excess = found.Infrared - 1;
        var height = spread * spread;

        // Of what keeps time with the heart, the phase that the pulse has is in infrared's share; red's own is not known.
        var infrared = movement.Infrared + (excess * excess / TimeKeepingFreedom);
        var own = movement.OwnRed * TimeKeepingFreedom / (TimeKeepingFreedom - 1);
        var share = infrared / (height + infrared);
        var ratio = (found.Red - (excess * movement.Slope * share)) / (1 + (excess * (1 - share)));
        var weight = (ratio * (1 - share)) + (movement.Slope * share);
        var variance = ((ratio - weight) * (ratio - weight) * height) + ((movement.Slope - weight) * (movement.Slope - weight) * infrared) + own;
        return new(ratio, Math.Sqrt(variance), 1 / found.Mixture, found.Agreement);
    }

    private bool TryLayOut(ReadOnlySpan<double> pairs, SlowBasis basis, PulseTemplate calm, (double Infrared, double Red) mixture, out PulseShares shares)
    {
        shares = default;
        var window = work.AsSpan(0, pairs.Length);
        for (var n = 0; n < pairs.Length; n += 2)
        {
            window[n] = (mixture.Infrared * pairs[n]) + (mixture.Red * pairs[n + 1]);
        }

        finder.Find(window, calm.PeriodBins / design.BinRateHz);
        if (finder.Count < FewestBeats)
        {
            return false;
        }

        calm.LayOut(finder.Rises, window);
        basis.Remove(window);
        shares = PulseShares.Of(pairs, window);
        return true;
    }

    // The movement's covariance, inverted, times the pulse in either light, which in infrared has the calm height.
    private (double Infrared, double Red) MixtureWithoutMovement(ReadOnlySpan<double> pairs, in PulseShares found)
    {
        double ii = 0, ir = 0, rr = 0;
        for (var n = 0; n < pairs.Length; n += 2)
        {
            var infrared = pairs[n] - (found.Infrared * work[n + 1]);
            var red = pairs[n + 1] - (found.Red * work[n + 1]);
            ii += infrared * infrared;
            ir += infrared * red;
            rr += red * red;
        }

        var least = LeastRest * found.Power;
        return (rr + least - (found.Red * ir), (found.Red * (ii + least)) - ir);
    }
}
