namespace PulseStream.Signal;

/// <summary>Sums over a window from which the regression of red on infrared follows, with time running from −1 to 1.</summary>
/// <param name="Infrared">Σ i².</param>
/// <param name="Red">Σ r².</param>
/// <param name="Cross">Σ r i.</param>
/// <param name="InfraredTime">Σ t i².</param>
/// <param name="InfraredTime2">Σ t² i².</param>
/// <param name="CrossTime">Σ t r i.</param>
internal readonly record struct RatioSums(double Infrared, double Red, double Cross, double InfraredTime, double InfraredTime2, double CrossTime)
{
    /// <summary>Sums of interleaved infrared and red.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    public static RatioSums Over(ReadOnlySpan<double> pairs)
    {
        double ii = 0, rr = 0, ri = 0, tii = 0, ttii = 0, tri = 0;
        var step = 4.0 / pairs.Length;
        var time = -1 + (step / 2);
        for (var n = 0; n + 1 < pairs.Length; n += 2)
        {
            var i = pairs[n];
            var r = pairs[n + 1];
            var square = i * i;
            var cross = r * i;
            ii += square;
            rr += r * r;
            ri += cross;
            tii += time * square;
            ttii += time * time * square;
            tri += time * cross;
            time += step;
        }

        return new(ii, rr, ri, tii, ttii, tri);
    }

    /// <summary>The steady and the moving fit.</summary>
    public RatioSolution Solve()
    {
        var ratio = Infrared > 0 ? Cross / Infrared : 0;
        var steady = Red - (ratio * Cross);
        var determinant = (Infrared * InfraredTime2) - (InfraredTime * InfraredTime);
        if (!(determinant > 1e-12 * Infrared * Infrared))
        {
            return new(ratio, steady, ratio, 0, steady);
        }

        var middle = ((Cross * InfraredTime2) - (CrossTime * InfraredTime)) / determinant;
        var drift = ((Infrared * CrossTime) - (InfraredTime * Cross)) / determinant;
        return new(ratio, steady, middle, drift, Red - (middle * Cross) - (drift * CrossTime));
    }
}
