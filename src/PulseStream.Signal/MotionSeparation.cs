namespace PulseStream.Signal;

/// <summary>
/// Tells pulse and movement apart in two lights. The movement m reaches them in one proportion k, the pulse p in another,
/// R: infrared is p + m and red R p + k m, so red = k infrared + (R − k) p. With p known from the calm finger, in height too,
/// one regression of red on infrared and p gives k and R − k.
/// </summary>
/// <remarks>
/// The beats along which the calm pulse is laid out come from the mixture of both lights that repeats best, then from
/// (red − k infrared) / (R − k), again and again. Movement at the pulse's own rate can pass for the pulse and the pulse for
/// movement; then the separated pulse does not look like the calm one, which <see cref="SeparatedPulse.Agreement"/> tells.
/// </remarks>
internal sealed class MotionSeparation(SignalDesign design)
{
    private const int Rounds = 3;
    private const int FewestBeats = 3;

    // What the separation leaves over is beats of another shape than the calm one, which is slower than white noise.
    private const double FreedomPerSecond = 6;
    private readonly double[] pulse = new double[2 * design.LongestWindowBins];
    private readonly BeatFinder finder = new(design);

    /// <summary>Separates one window.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed; on success the pulse in both lights without the movement.</param>
    /// <param name="basis">The slow part that was removed.</param>
    /// <param name="calm">The calm pulse.</param>
    /// <param name="separated">What came of it.</param>
    public bool TrySeparate(Span<double> pairs, SlowBasis basis, PulseTemplate calm, out SeparatedPulse separated)
    {
        var direction = PeriodicDirection.Find(pairs, calm.PeriodBins);
        var best = default(Regression);
        foreach (var sign in (ReadOnlySpan<double>)[1, -1])
        {
            Mix(pairs, sign * direction.Infrared, sign * direction.Red);
            if (TryRefine(pairs, basis, calm, out var found) && found.Agreement > best.Agreement)
            {
                best = found;
            }
        }

        separated = Judge(best, calm, pairs.Length / 2 / design.BinRateHz);
        if (separated.Agreement < design.Options.LeastCalmAgreement)
        {
            return false;
        }

        Mix(pairs, -best.MotionRatio / best.Difference, 1 / best.Difference);
        for (var n = 0; n < pairs.Length; n += 2)
        {
            pairs[n] = pulse[n];
            pairs[n + 1] = separated.Ratio * pulse[n];
        }

        return true;
    }

    private SeparatedPulse Judge(in Regression best, PulseTemplate calm, double seconds)
    {
        var options = design.Options;
        var height = best.Difference
            * Math.Sqrt((options.HeightSpread * options.HeightSpread) + (options.HeightSpreadPerRootSecond * options.HeightSpreadPerRootSecond * calm.AgeSeconds));
        var variance = best.UnitVariance * best.Rest / (FreedomPerSecond * seconds);
        return new(best.MotionRatio + best.Difference, Math.Sqrt(variance + (height * height)), best.MotionRatio, best.Agreement);
    }

    private void Mix(ReadOnlySpan<double> pairs, double infrared, double red)
    {
        for (var n = 0; n < pairs.Length; n += 2)
        {
            pulse[n] = (infrared * pairs[n]) + (red * pairs[n + 1]);
        }
    }

    private bool TryRefine(ReadOnlySpan<double> pairs, SlowBasis basis, PulseTemplate calm, out Regression found)
    {
        var work = pulse.AsSpan(0, pairs.Length);
        found = default;
        for (var round = 0; round < Rounds; round++)
        {
            finder.Find(work, calm.PeriodBins / design.BinRateHz);
            if (finder.Count < FewestBeats)
            {
                return false;
            }

            calm.LayOut(finder.Rises, work);
            basis.Remove(work);
            found = Regression.Of(pairs, work);
            if (!(found.Difference * found.Difference > 0))
            {
                return false;
            }

            Mix(pairs, -found.MotionRatio / found.Difference, 1 / found.Difference);
        }

        found = found with { Agreement = Correlation(work) };
        return true;
    }

    private static double Correlation(ReadOnlySpan<double> pairs)
    {
        double aa = 0, ab = 0, bb = 0;
        for (var n = 0; n < pairs.Length; n += 2)
        {
            aa += pairs[n] * pairs[n];
            ab += pairs[n] * pairs[n + 1];
            bb += pairs[n + 1] * pairs[n + 1];
        }

        return ab > 0 ? ab / Math.Sqrt(aa * bb) : 0;
    }

    // Red on infrared and the laid-out pulse.
    private readonly record struct Regression(double MotionRatio, double Difference, double UnitVariance, double Rest, double Agreement)
    {
        public static Regression Of(ReadOnlySpan<double> pairs, ReadOnlySpan<double> laidOut)
        {
            double ii = 0, ip = 0, pp = 0, ri = 0, rp = 0, rr = 0;
            for (var n = 0; n < pairs.Length; n += 2)
            {
                var i = pairs[n];
                var r = pairs[n + 1];
                var p = laidOut[n + 1];
                ii += i * i;
                ip += i * p;
                pp += p * p;
                ri += r * i;
                rp += r * p;
                rr += r * r;
            }

            var determinant = (ii * pp) - (ip * ip);
            if (!(determinant > 1e-12 * ii * pp))
            {
                return default;
            }

            var motion = ((ri * pp) - (rp * ip)) / determinant;
            var difference = ((rp * ii) - (ri * ip)) / determinant;

            // Variance of the sum of both coefficients for a residual of unit variance.
            var unit = (ii + pp - (2 * ip)) / determinant;
            return new(motion, difference, unit, Math.Max(0, rr - (motion * ri) - (difference * rp)), 0);
        }
    }
}
