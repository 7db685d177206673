namespace PulseStream.Signal;

/// <summary>What each light, and a mixture of them, has of a laid-out pulse, as multiples of its height.</summary>
/// <param name="Infrared">Infrared's.</param>
/// <param name="Red">Red's.</param>
/// <param name="Mixture">The mixture's.</param>
/// <param name="Power">Sum of the laid-out pulse's squares.</param>
/// <param name="Agreement">Correlation of the mixture with the laid-out pulse.</param>
internal readonly record struct PulseShares(double Infrared, double Red, double Mixture, double Power, double Agreement)
{
    /// <summary>Shares of a window.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="laidOut">The mixture and the laid-out pulse in turn.</param>
    public static PulseShares Of(ReadOnlySpan<double> pairs, ReadOnlySpan<double> laidOut)
    {
        double ip = 0, rp = 0, pp = 0, mp = 0, mm = 0;
        for (var n = 0; n < pairs.Length; n += 2)
        {
            var m = laidOut[n];
            var p = laidOut[n + 1];
            ip += pairs[n] * p;
            rp += pairs[n + 1] * p;
            pp += p * p;
            mp += m * p;
            mm += m * m;
        }

        return new(ip / pp, rp / pp, mp / pp, pp, mp / Math.Sqrt(pp * mm));
    }
}
