namespace PulseStream.Signal;

/// <summary>
/// How much of a laid-out pulse a movement has by chance, from what each light is without its share of the pulse: the
/// sum over all lags of what that is correlated with itself by times what the pulse is. Neither has to be white or of known
/// colour, and what keeps time with the heart has much.
/// </summary>
/// <remarks>Source: W. K. Newey, K. D. West, Econometrica 1987;55:703, from memory, here with all lags of a window as they are: it begins and ends with nothing.</remarks>
internal sealed class MovementChance
{
    // What was smoothed to 8 Hz is told whole by as many points a second.
    private const double LeastPointRateHz = 16;

    private readonly int step;
    private readonly double[] infrared;
    private readonly double[] red;
    private readonly double[] pulse;

    public MovementChance(SignalDesign design)
    {
        step = Math.Max(1, (int)(design.BinRateHz / LeastPointRateHz));
        infrared = new double[(design.LongestWindowBins / step) + 1];
        red = new double[infrared.Length];
        pulse = new double[infrared.Length];
    }

    /// <summary>Variances of the shares, in units of the laid-out pulse's height.</summary>
    /// <param name="pairs">Infrared and red in turn.</param>
    /// <param name="laidOut">A mixture and the laid-out pulse in turn.</param>
    /// <param name="shares">What the lights have of the pulse.</param>
    public MovementVariance Of(ReadOnlySpan<double> pairs, ReadOnlySpan<double> laidOut, in PulseShares shares)
    {
        var count = 0;
        for (var n = 0; n < pairs.Length; n += 2 * step)
        {
            pulse[count] = laidOut[n + 1];
            infrared[count] = pairs[n] - (shares.Infrared * pulse[count]);
            red[count] = pairs[n + 1] - (shares.Red * pulse[count]);
            count++;
        }

        double ofInfrared = 0, ofBoth = 0, ofRed = 0;
        for (var lag = 0; lag < count; lag++)
        {
            double ii = 0, ir = 0, rr = 0, pp = 0;
            for (var n = 0; n + lag < count; n++)
            {
                ii += infrared[n] * infrared[n + lag];
                ir += (infrared[n] * red[n + lag]) + (red[n] * infrared[n + lag]);
                rr += red[n] * red[n + lag];
                pp += pulse[n] * pulse[n + lag];
            }

            var times = lag == 0 ? 1 : 2;
            ofInfrared += times * ii * pp;
            ofBoth += 0.5 * times * ir * pp;
            ofRed += times * rr * pp;
        }

        var scale = step * step / (shares.Power * shares.Power * count);
        var slope = ofInfrared > 0 ? ofBoth / ofInfrared : 0;
        return new(Math.Max(ofInfrared, 0) * scale, slope, Math.Max(ofRed - (slope * ofBoth), 0) * scale);
    }
}
