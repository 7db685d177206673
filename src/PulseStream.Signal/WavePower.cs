namespace PulseStream.Signal;

/// <summary>
/// Σ of squares of a cosine and a sine about a window's middle: one is even about it and the other odd, so neither holds any of the other,
/// and what a steady wave has in a window follows from two products.
/// </summary>
/// <param name="Cosine">Σ of squares of the cosine.</param>
/// <param name="Sine">Σ of squares of the sine.</param>
internal readonly record struct WavePower(double Cosine, double Sine)
{
    /// <summary>Of a whole window, nothing taken away.</summary>
    /// <param name="turnPerPlace">Angle from one place to the next.</param>
    /// <param name="length">Places.</param>
    public static WavePower Of(double turnPerPlace, int length)
    {
        // Σ cos(2 a n) over places about the middle is Dirichlet's kernel.
        var twice = Math.Sin(turnPerPlace * length) / Math.Sin(turnPerPlace);
        return new((length + twice) / 2, (length - twice) / 2);
    }

    /// <summary>Of what is left when a window's slow part has been taken away: near the slow edge that takes half of a wave, and of one phase more than of the other.</summary>
    /// <param name="turnPerPlace">Angle from one place to the next.</param>
    /// <param name="slow">What was taken away.</param>
    public static WavePower LeftBy(double turnPerPlace, SlowBasis slow)
    {
        var (turnSine, turnCosine) = Math.SinCos(turnPerPlace);
        var whole = Of(turnPerPlace, slow.Length);
        var (cosineLeft, sineLeft) = (whole.Cosine, whole.Sine);
        foreach (var rows in slow.GroupsOfShapes)
        {
            double e0 = 0, e1 = 0, e2 = 0, o0 = 0, o1 = 0, o2 = 0;
            var (sine, cosine) = Math.SinCos(-turnPerPlace * (slow.Length - 1) / 2);
            foreach (ref readonly var row in rows.AsSpan())
            {
                e0 += row.Even0 * cosine;
                e1 += row.Even1 * cosine;
                e2 += row.Even2 * cosine;
                o0 += row.Odd0 * sine;
                o1 += row.Odd1 * sine;
                o2 += row.Odd2 * sine;
                var next = (cosine * turnCosine) - (sine * turnSine);
                sine = (sine * turnCosine) + (cosine * turnSine);
                cosine = next;
            }

            // Each row stands for two places, one on either side of the middle.
            cosineLeft -= 4 * ((e0 * e0) + (e1 * e1) + (e2 * e2));
            sineLeft -= 4 * ((o0 * o0) + (o1 * o1) + (o2 * o2));
        }

        return new(cosineLeft, sineLeft);
    }
}
