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
    private readonly double[] rest = new double[1000];
    private readonly double[] a = new double[1000];
    private readonly double[] b = new double[1000];
    private readonly double[] flatInfrared = new double[1000];
    private readonly double[] flatRed = new double[1000];
    private readonly double[] flatPulse = new double[1000];
    private readonly MovementColour colour = new();

    public MovementChance(SignalDesign design)
    {
        step = Math.Max(1, (int)(design.BinRateHz / LeastPointRateHz));
        infrared = new double[(design.LongestWindowBins / step) + 1];
        red = new double[infrared.Length];
        pulse = new double[infrared.Length];
    }

    public MovementVariance Of(ReadOnlySpan<double> pairs, ReadOnlySpan<double> laidOut, ref PulseShares shares)
    {
        var count = 0;
        for (var n = 0; n < pairs.Length; n += 2 * step)
        {
            pulse[count] = laidOut[n + 1];
            infrared[count] = pairs[n];
            red[count] = pairs[n + 1];
            count++;
        }

        var movement = Measure(infrared.AsSpan(0, count), red.AsSpan(0, count), pulse.AsSpan(0, count), ref shares, false);
        if (Environment.GetEnvironmentVariable("NOWHITE") == "1") return movement;
        var flat = count - MovementColour.Lead;
        var rounds = int.Parse(Environment.GetEnvironmentVariable("ROUNDS") ?? "2");
        for (var round = 0; round < rounds; round++)
        {
            for (var n = 0; n < count; n++)
            {
                rest[n] = red[n] - (shares.Red * pulse[n]) - (movement.Slope * (infrared[n] - (shares.Infrared * pulse[n])));
            }

            colour.Learn(rest.AsSpan(0, count));
            colour.Flatten(infrared.AsSpan(0, count), flatInfrared);
            colour.Flatten(red.AsSpan(0, count), flatRed);
            colour.Flatten(pulse.AsSpan(0, count), flatPulse);
            movement = Measure(flatInfrared.AsSpan(0, flat), flatRed.AsSpan(0, flat), flatPulse.AsSpan(0, flat), ref shares, true);
        }

        return movement;
    }

    private MovementVariance Measure(ReadOnlySpan<double> ir, ReadOnlySpan<double> rd, ReadOnlySpan<double> pl, ref PulseShares shares, bool renew)
    {
        var count = ir.Length;
        double ip = 0, rp = 0, pp = 0;
        for (var n = 0; n < count; n++)
        {
            ip += ir[n] * pl[n];
            rp += rd[n] * pl[n];
            pp += pl[n] * pl[n];
        }

        if (renew) shares = shares with { Infrared = ip / pp, Red = rp / pp };
        for (var n = 0; n < count; n++)
        {
            a[n] = ir[n] - (shares.Infrared * pl[n]);
            b[n] = rd[n] - (shares.Red * pl[n]);
        }

        double ofInfrared = 0, ofBoth = 0, ofRed = 0;
        for (var lag = 0; lag < count; lag++)
        {
            double ii = 0, ir2 = 0, rr = 0, p2 = 0;
            for (var n = 0; n + lag < count; n++)
            {
                ii += a[n] * a[n + lag];
                ir2 += (a[n] * b[n + lag]) + (b[n] * a[n + lag]);
                rr += b[n] * b[n + lag];
                p2 += pl[n] * pl[n + lag];
            }

            var times = lag == 0 ? 1 : 2;
            ofInfrared += times * ii * p2;
            ofBoth += 0.5 * times * ir2 * p2;
            ofRed += times * rr * p2;
        }

        var scale = 1 / (pp * pp * count);
        var slope = ofInfrared > 0 ? ofBoth / ofInfrared : 0;
        return new(Math.Max(ofInfrared, 0) * scale, slope, Math.Max(ofRed - (slope * ofBoth), 0) * scale);
    }
}
