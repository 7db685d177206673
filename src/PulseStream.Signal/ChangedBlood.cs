namespace PulseStream.Signal;

/// <summary>
/// Reads R from a window in which the blood has changed: red is one R times infrared before the change and another behind it, and
/// nothing is left over. What moves leaves something over whatever is taken for its beginning.
/// </summary>
/// <remarks>
/// A regression of two phases whose break is not known (R. E. Quandt, J Am Stat Assoc 1958;53:873, from memory). What is slow
/// of the pulse was taken away as such and is not in infrared any more, but changes with it: polynomials that begin with the change, in red alone.
/// </remarks>
/// <param name="design">Filters and bases.</param>
internal sealed class ChangedBlood(SignalDesign design)
{
    private const int SlowShapes = 5;
    private const int After = SlowShapes + 1;
    private const int Columns = After + 1;

    // Where the change is best by sums alone, it is looked for more closely: a front nearby moves it by a quarter of a beat, and
    // blood that is mixed on its way changes over a second as well as at once.
    private const int Steps = 2;
    private static readonly (double NearSeconds, double WiderSeconds)[] Searches = [(0.15, 0.8), (0.06, 0.3), (0.02, 0.1)];

    // What moves is hardly ever explained by more; it is not looked at any closer.
    private const double LargestRoughLeft = 0.25;

    // What the columns take but for R itself, with the place and the width of the change that were chosen.
    private const int Freedom = SlowShapes + 3;
    private readonly LeastSquares squares = new(Columns);
    private readonly double[] columns = new double[Columns * design.LongestWindowBins];
    private readonly double[] power = new double[design.LongestWindowBins];
    private readonly double[] red = new double[design.LongestWindowBins];
    private readonly double[] parts = new double[2 * design.LongestWindowBins];

    /// <summary>Reads a window; leaves it with the newest R throughout where the blood has changed in it.</summary>
    /// <param name="pairs">Infrared and red in turn, slow part removed.</param>
    /// <param name="basis">The slow part that was removed.</param>
    /// <param name="noise">White noise of a bin.</param>
    /// <param name="whole">What was told of the window as one.</param>
    /// <param name="changed">What is told of its newest part.</param>
    /// <returns>Whether the lights agree as well as in any calm window once the change is taken into account.</returns>
    public bool TryRead(Span<double> pairs, SlowBasis basis, in WhiteNoise noise, in RatioFit whole, out RatioFit changed)
    {
        changed = default;
        var length = pairs.Length / 2;
        var least = (int)(design.Options.LeastChangedSeconds * design.BinRateHz);
        if (length < 2 * least)
        {
            return false;
        }

        var redPower = 0.0;
        for (var n = 0; n < length; n++)
        {
            red[n] = pairs[(2 * n) + 1];
            redPower += red[n] * red[n];
        }

        var disagreeing = whole.Disagreement * whole.Disagreement * whole.PulseSize * whole.PulseSize * length;
        var best = new Change(RoughPlace(pairs, least), 0, 0);
        foreach (var (near, wider) in Searches)
        {
            best = Search(pairs, basis, best, Math.Max(1, (int)(near * design.BinRateHz)), wider * design.BinRateHz, least);
            if (redPower - best.Explained > LargestRoughLeft * disagreeing)
            {
                return false;
            }
        }

        LayOut(pairs, basis, best);
        changed = Read(pairs, basis, noise, whole, redPower, length - best.Place);
        if (!(changed.Disagreement <= design.Options.ChangedDisagreement)
            || !(changed.StandardError > 0)
            || !(Math.Abs(LogGrowth(pairs, best.Place)) <= design.Options.LargestGrowthAtChange))
        {
            return false;
        }

        Straighten(pairs);
        return true;
    }

    // The places and widths about the best so far.
    private Change Search(ReadOnlySpan<double> pairs, SlowBasis basis, Change best, int near, double wider, int least)
    {
        var about = best;
        var length = pairs.Length / 2;
        for (var step = -Steps; step <= Steps; step++)
        {
            var place = Math.Clamp(about.Place + (step * near), least, length - least);
            for (var more = -1; more <= 1; more++)
            {
                var width = about.Width + (more * wider);
                if (width < 0)
                {
                    continue;
                }

                var change = new Change(place, width, 0);
                LayOut(pairs, basis, change);
                var explained = squares.Solve(columns, length, Columns, red.AsSpan(0, length));
                best = explained > best.Explained ? change with { Explained = explained } : best;
            }
        }

        return best;
    }

    // Two plain regressions leave least where the change is, to within what the slow part has smeared.
    private static int RoughPlace(ReadOnlySpan<double> pairs, int least)
    {
        var (squares, products) = (0.0, 0.0);
        for (var n = 0; n < pairs.Length; n += 2)
        {
            squares += pairs[n] * pairs[n];
            products += pairs[n] * pairs[n + 1];
        }

        var length = pairs.Length / 2;
        var (squaresBefore, productsBefore, most, place) = (0.0, 0.0, 0.0, least);
        for (var n = 0; n < length - least; n++)
        {
            squaresBefore += pairs[2 * n] * pairs[2 * n];
            productsBefore += pairs[2 * n] * pairs[(2 * n) + 1];
            var after = products - productsBefore;
            var explained = (productsBefore * productsBefore / squaresBefore) + (after * after / (squares - squaresBefore));
            if (n + 1 >= least && explained > most)
            {
                (most, place) = (explained, n + 1);
            }
        }

        return place;
    }

    // Infrared before the change, what is slow of the pulse and changed with it, infrared behind the change: each without what is
    // slow in the window.
    private void LayOut(ReadOnlySpan<double> pairs, SlowBasis basis, in Change change)
    {
        var length = pairs.Length / 2;
        var both = parts.AsSpan(0, 2 * length);
        for (var n = 0; n < length; n++)
        {
            power[n] = change.ShareAt(n);
            both[2 * n] = power[n] * pairs[2 * n];
            both[(2 * n) + 1] = power[n];
        }

        Keep(both, basis, After, 1);
        for (var n = 0; n < length; n++)
        {
            columns[n] = pairs[2 * n] - both[2 * n];
        }

        for (var k = 2; k < After; k += 2)
        {
            for (var n = 0; n < length; n++)
            {
                var x = (n - change.Place) / (double)length;
                both[2 * n] = power[n] * x;
                power[n] *= x * x;
                both[(2 * n) + 1] = power[n];
            }

            Keep(both, basis, k, k + 1);
        }
    }

    private void Keep(Span<double> both, SlowBasis basis, int first, int second)
    {
        basis.Remove(both);
        var length = both.Length / 2;
        for (var n = 0; n < length; n++)
        {
            columns[(first * length) + n] = both[2 * n];
            columns[(second * length) + n] = both[(2 * n) + 1];
        }
    }

    private RatioFit Read(ReadOnlySpan<double> pairs, SlowBasis basis, in WhiteNoise noise, in RatioFit whole, double redPower, int newest)
    {
        var length = pairs.Length / 2;
        var after = columns.AsSpan(After * length, length);
        var own = SumOfSquares(after) - squares.Solve(columns, length, After, after);
        var left = Math.Max(0, redPower - squares.Solve(columns, length, Columns, red.AsSpan(0, length)));
        var ratio = squares.Solution[After];
        var freedom = Math.Max(1, (length * design.Kernel.NoiseGain) - basis.Count - Freedom);
        var white = Math.Max(noise.OfResidual(ratio), left / freedom);
        var ownNoise = Math.Min(freedom * noise.Infrared * newest / length, 0.5 * own);
        return whole with
        {
            Ratio = ratio * own / (own - ownNoise),
            StandardError = Math.Sqrt(white / (own - ownNoise)),
            Disagreement = Math.Sqrt(Math.Max(0, left - (freedom * noise.OfResidual(ratio))) / (whole.PulseSize * whole.PulseSize * length)),
            IsMoving = false,
            Lag = 0,
        };
    }

    private void Straighten(Span<double> pairs)
    {
        var length = pairs.Length / 2;
        var shares = squares.Solution;
        for (var n = 0; n < length; n++)
        {
            var change = (shares[After] - shares[0]) * columns[n];
            for (var k = 1; k < After; k++)
            {
                change -= shares[k] * columns[(k * length) + n];
            }

            pairs[(2 * n) + 1] += change;
        }
    }

    // What moves with the heart takes from its pulse or adds to it.
    private static double LogGrowth(ReadOnlySpan<double> pairs, int place)
    {
        var (before, behind) = (0.0, 0.0);
        for (var n = 0; n < pairs.Length; n += 2)
        {
            var square = pairs[n] * pairs[n];
            before += n < 2 * place ? square : 0;
            behind += n < 2 * place ? 0 : square;
        }

        return 0.5 * Math.Log(behind / ((pairs.Length / 2) - place) * place / before);
    }

    private static double SumOfSquares(ReadOnlySpan<double> values)
    {
        var sum = 0.0;
        foreach (var value in values)
        {
            sum += value * value;
        }

        return sum;
    }

    private readonly record struct Change(int Place, double Width, double Explained)
    {
        public double ShareAt(int n) => Width > 0 ? Math.Clamp(((n - Place) / Width) + 0.5, 0, 1) : n < Place ? 0 : 1;
    }
}
