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
        double ii = 0, rr = 0, ri = 0, tii = 0, ttii = 0, tri = 0;
        var step = 2.0 / red.Length;
        var time = -1 + (step / 2);
        for (var n = 0; n < red.Length / 2; n++)
        {
            double earlySquare = infrared[n] * infrared[n], lateSquare = infrared[^(n + 1)] * infrared[^(n + 1)];
            double earlyCross = red[n] * infrared[n], lateCross = red[^(n + 1)] * infrared[^(n + 1)];
            ii = Math.FusedMultiplyAdd(infrared[^(n + 1)], infrared[^(n + 1)], Math.FusedMultiplyAdd(infrared[n], infrared[n], ii));
            rr = Math.FusedMultiplyAdd(red[^(n + 1)], red[^(n + 1)], Math.FusedMultiplyAdd(red[n], red[n], rr));
            ri += earlyCross + lateCross;
            tii = Math.FusedMultiplyAdd(earlySquare - lateSquare, time, tii);
            tri = Math.FusedMultiplyAdd(earlyCross - lateCross, time, tri);
            ttii = Math.FusedMultiplyAdd((earlySquare + lateSquare) * time, time, ttii);
            time += step;
        }

        var middle = red.Length / 2;
        return red.Length % 2 == 0
            ? new(ii, rr, ri, tii, ttii, tri)
            : new(
                Math.FusedMultiplyAdd(infrared[middle], infrared[middle], ii),
                Math.FusedMultiplyAdd(red[middle], red[middle], rr),
                ri + (red[middle] * infrared[middle]),
                tii,
                ttii,
                tri);
    }

    private static double Even(in SlowRow row, int k) => k switch { 0 => row.Even0, 1 => row.Even1, _ => row.Even2 };

    private static double Odd(in SlowRow row, int k) => k switch { 0 => row.Odd0, 1 => row.Odd1, _ => row.Odd2 };
}
