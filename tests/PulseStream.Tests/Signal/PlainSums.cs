using System.Numerics;
using PulseStream.Signal;

namespace PulseStream.Tests.Signal;

/// <summary>The sums of the signal stage one light and one value after the other: what the vectors have to give to the last bit.</summary>
internal static class PlainSums
{
    public static double Smooth(double[] taps, ReadOnlySpan<double> window)
    {
        var half = taps.Length / 2;
        var sum = window[half] * taps[half];
        for (var k = 0; k < half; k++)
        {
            sum = Math.FusedMultiplyAdd(window[k] + window[^(k + 1)], taps[k], sum);
        }

        return sum;
    }

    public static void RemoveSlow(SlowBasis basis, double[] light)
    {
        foreach (var rows in basis.GroupsOfShapes)
        {
            double[] even = new double[3], odd = new double[3];
            for (var n = 0; n < rows.Length; n++)
            {
                for (var k = 0; k < 3; k++)
                {
                    even[k] = Math.FusedMultiplyAdd(light[n] + light[^(n + 1)], Even(rows[n], k), even[k]);
                    odd[k] = Math.FusedMultiplyAdd(light[n] - light[^(n + 1)], Odd(rows[n], k), odd[k]);
                }
            }

            for (var n = 0; n < rows.Length; n++)
            {
                double evenPart = even[0] * Even(rows[n], 0), oddPart = odd[0] * Odd(rows[n], 0);
                for (var k = 1; k < 3; k++)
                {
                    evenPart = Math.FusedMultiplyAdd(even[k], Even(rows[n], k), evenPart);
                    oddPart = Math.FusedMultiplyAdd(odd[k], Odd(rows[n], k), oddPart);
                }

                light[n] -= evenPart + oddPart;
                light[^(n + 1)] -= evenPart - oddPart;
            }
        }
    }

    public static RatioSums RatioSumsOver(double[] infrared, double[] red)
    {
        double ii = 0, rr = 0, lateIi = 0, lateRr = 0, ri = 0, tii = 0, ttii = 0, tri = 0;
        var step = 2.0 / red.Length;
        var time = -1 + (step / 2);
        for (var n = 0; n < red.Length / 2; n++)
        {
            double earlySquare = infrared[n] * infrared[n], lateSquare = infrared[^(n + 1)] * infrared[^(n + 1)];
            double earlyCross = red[n] * infrared[n], lateCross = red[^(n + 1)] * infrared[^(n + 1)];
            ii = Math.FusedMultiplyAdd(infrared[n], infrared[n], ii);
            rr = Math.FusedMultiplyAdd(red[n], red[n], rr);
            lateIi = Math.FusedMultiplyAdd(infrared[^(n + 1)], infrared[^(n + 1)], lateIi);
            lateRr = Math.FusedMultiplyAdd(red[^(n + 1)], red[^(n + 1)], lateRr);
            ri += earlyCross + lateCross;
            tii = Math.FusedMultiplyAdd(earlySquare - lateSquare, time, tii);
            tri = Math.FusedMultiplyAdd(earlyCross - lateCross, time, tri);
            ttii = Math.FusedMultiplyAdd((earlySquare + lateSquare) * time, time, ttii);
            time += step;
        }

        var middle = red.Length / 2;
        return red.Length % 2 == 0
            ? new(ii + lateIi, rr + lateRr, ri, tii, ttii, tri)
            : new(
                Math.FusedMultiplyAdd(infrared[middle], infrared[middle], ii) + lateIi,
                Math.FusedMultiplyAdd(red[middle], red[middle], rr) + lateRr,
                ri + (red[middle] * infrared[middle]),
                tii,
                ttii,
                tri);
    }

    /// <summary>A sum over even places and one over odd ones, in turn, then both.</summary>
    public static double OfHalves(int length, Func<int, double, double> add)
    {
        double even = 0, odd = 0;
        for (var n = 0; n < length; n++)
        {
            (even, odd) = n % 2 == 0 ? (add(n, even), odd) : (even, add(n, odd));
        }

        return even + odd;
    }

    public static WaveShape WaveShapeOf(double[] infrared, double slopeNoise, int edge)
    {
        var count = infrared.Length - (2 * edge);
        var mean = OfHalves(count, (n, sum) => sum - infrared[n + edge]) / count;
        var square = OfHalves(count, (n, sum) => sum + (infrared[n + edge] * infrared[n + edge])) / count;
        var cube = OfHalves(count, (n, sum) => Math.FusedMultiplyAdd(infrared[n + edge] * infrared[n + edge], -infrared[n + edge], sum)) / count;
        var slopeSquare = OfHalves(count, (n, sum) => sum + (Slope(n) * Slope(n))) / count;
        var slopeCube = OfHalves(count, (n, sum) => Math.FusedMultiplyAdd(Slope(n) * Slope(n), Slope(n), sum)) / count;
        var ofPulse = Math.Max(slopeSquare - slopeNoise, slopeSquare * 0.2);
        var third = cube - (3 * mean * square) + (2 * mean * mean * mean);
        var variance = square - (mean * mean);
        return new(slopeCube / (ofPulse * Math.Sqrt(ofPulse)), third / (variance * Math.Sqrt(variance)), 50 * Math.Sqrt(ofPulse / variance) / (4 * Math.PI));

        double Slope(int n) => infrared[n + edge - 1] - infrared[n + edge + 1];
    }

    /// <summary>Correlation of a beat with the mean of the others, over the points that at least two reach.</summary>
    public static double Likeness(double[][] beats, int own)
    {
        var compared = Math.Min(beats[own].Length, beats.Select(beat => beat.Length).Order().ElementAt(beats.Length - 2));
        var mine = beats[own];
        var others = Enumerable.Range(0, compared).Select(Others).ToArray();
        double a = OfHalves(compared, (n, sum) => sum + mine[n]), b = OfHalves(compared, (n, sum) => sum + others[n]);
        var aa = OfHalves(compared, (n, sum) => Math.FusedMultiplyAdd(mine[n], mine[n], sum));
        var ab = OfHalves(compared, (n, sum) => Math.FusedMultiplyAdd(mine[n], others[n], sum));
        var bb = OfHalves(compared, (n, sum) => Math.FusedMultiplyAdd(others[n], others[n], sum));
        return (ab - (a * b / compared)) / Math.Sqrt((aa - (a * a / compared)) * (bb - (b * b / compared)));

        double Others(int n)
        {
            var reaching = beats.Where(beat => beat.Length > n).ToArray();
            return (reaching.Aggregate(0.0, (sum, beat) => sum + beat[n]) - mine[n]) * (1.0 / (reaching.Length - 1));
        }
    }

    /// <summary>The leap of infrared that is largest where red leaps the same way, every place looked at.</summary>
    public static double LeapIn(double[] infrared, double[] red, int half, int level, double least)
    {
        var largest = 0.0;
        for (var middle = half + level; middle + half + level < infrared.Length; middle++)
        {
            var leap = LeapAt(infrared, middle, half, level, level, least);
            largest = Math.Abs(leap) > Math.Abs(largest) && leap * LeapAt(red, middle, half, level, level, least) > 0 ? leap : largest;
        }

        return largest;
    }

    /// <summary>The largest leap of red − R × infrared, every place looked at that so many still bins can go before.</summary>
    public static double LeapBesidePulse(double[] infrared, double[] red, double ratio, int half, int still, int level, double least)
    {
        var rest = infrared.Zip(red, (i, r) => r - (ratio * i)).ToArray();
        var largest = 0.0;
        for (var middle = half + still; middle + half + level < rest.Length; middle++)
        {
            var leap = LeapAt(rest, middle, half, still, level, least);
            largest = Math.Abs(leap) > Math.Abs(largest) ? leap : largest;
        }

        return largest;
    }

    private static double LeapAt(double[] light, int middle, int half, int levelBefore, int level, double least)
    {
        var quick = light[middle + (half / 2)] - light[middle - (half / 2)];
        var before = light[(middle - half - levelBefore)..(middle - half + 1)];
        var after = light[(middle + half)..(middle + half + level + 1)];
        var leap = (after.Aggregate(0.0, (sum, x) => sum + x) / after.Length) - (before.Aggregate(0.0, (sum, x) => sum + x) / before.Length);
        var isQuick = Math.Abs(quick) > 0.55 * Math.Max(least, Math.Abs(leap)) && Math.Abs(light[middle + half] - light[middle - half]) > 0.72 * least;
        var isLevel = Math.Max(before.Max() - before.Min(), after.Max() - after.Min()) < 0.28 * Math.Abs(leap);
        return isQuick && isLevel && Math.Abs(leap) > least ? leap : 0;
    }

    /// <summary>Amplitude of a wave's third harmonic over its first, by Fourier sums over the phase between its inner beats.</summary>
    public static double ThirdWaveShare(double[] volumes, double[] rises)
    {
        var sums = new Complex[2];
        for (var beat = 1; beat + 2 < rises.Length; beat++)
        {
            for (var n = (int)Math.Ceiling(rises[beat]); n < rises[beat + 1]; n++)
            {
                var phase = 2 * Math.PI * (n - rises[beat]) / (rises[beat + 1] - rises[beat]);
                sums[0] += volumes[n] * Complex.Exp(Complex.ImaginaryOne * phase);
                sums[1] += volumes[n] * Complex.Exp(Complex.ImaginaryOne * 3 * phase);
            }
        }

        return sums[1].Magnitude / sums[0].Magnitude;
    }

    /// <summary>The second steepest of the rises within so many bins about one, or its own where it is alone.</summary>
    public static double NormalSteepness(double[] slopes, double[] rises, int k, double near)
    {
        var from = Math.Max(0, Math.Min(rises[k] - (near / 2), slopes.Length - near));
        var some = rises.Where(rise => rise >= from && rise <= from + near).Select(rise => slopes[(int)rise]).OrderDescending().ToArray();
        return some.Length > 1 ? some[1] : some[0];
    }

    /// <summary>Where a weak rise comes from, between the feet of the full beats about it, 0, and the crest of the one before, 1.</summary>
    public static double FootShare(double[] slopes, double strong, double weak, double next, double reach)
    {
        var from = Math.Max(0, (int)(strong - reach));
        double volume = 0, footBefore = 0, peak = 0, low = 0, footBehind = 0;
        for (var n = from; n < (int)next; n++)
        {
            volume += slopes[n];
            footBefore = n < strong ? Math.Min(footBefore, volume) : footBefore;
            peak = n >= strong && n < weak ? Math.Max(peak, volume) : peak;
            low = n < strong ? volume : n < weak ? (volume >= peak ? volume : Math.Min(low, volume)) : low;
            footBehind = n <= weak ? volume : Math.Min(footBehind, volume);
        }

        var foot = 0.5 * (footBefore + footBehind);
        return (low - foot) / (peak - foot);
    }

    /// <summary>Normalised autocorrelation of a window averaged to coarse bins.</summary>
    public static double Autocorrelation(double[] infrared, int stride, int lag)
    {
        var coarse = infrared.Chunk(stride).Where(part => part.Length == stride).Select(part => part.Aggregate(0.0, (sum, light) => sum - light)).ToArray();
        double cross = 0, early = 0, late = 0;
        for (var n = 0; n + lag < coarse.Length; n++)
        {
            cross += coarse[n] * coarse[n + lag];
            early += coarse[n] * coarse[n];
            late += coarse[n + lag] * coarse[n + lag];
        }

        return cross / Math.Sqrt(early * late);
    }

    private static double Even(in SlowRow row, int k) => k switch { 0 => row.Even0, 1 => row.Even1, _ => row.Even2 };

    private static double Odd(in SlowRow row, int k) => k switch { 0 => row.Odd0, 1 => row.Odd1, _ => row.Odd2 };
}
