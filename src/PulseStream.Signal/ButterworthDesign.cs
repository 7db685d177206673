using System.Numerics;

namespace PulseStream.Signal;

/// <summary>
/// Butterworth band-passes as second-order sections, from the poles of the analogue prototype by the bilinear transform.
/// Sections are paired and ordered as SciPy's <c>butter(…, output='sos')</c> does it: poles nearest the unit circle last,
/// each with its nearest zeros.
/// </summary>
/// <remarks>Source: A. V. Oppenheim, R. W. Schafer, Discrete-Time Signal Processing, chapter 7 (bilinear transform).</remarks>
public static class ButterworthDesign
{
    /// <summary>A band-pass whose response at zero frequency is exactly zero; its gain is 1/√2 at both edges.</summary>
    /// <param name="order">Order of the prototype, 1 or more; the filter has twice as many poles.</param>
    /// <param name="lowHz">Lower edge, above 0.</param>
    /// <param name="highHz">Upper edge, above the lower and below half the rate.</param>
    /// <param name="rateHz">Sample rate.</param>
    /// <exception cref="ArgumentOutOfRangeException">An order or edge outside its limits.</exception>
    public static SecondOrderSection[] BandPass(int order, double lowHz, double highHz, double rateHz)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(order, 1);
        if (!(lowHz > 0 && lowHz < highHz && highHz < rateHz / 2))
        {
            throw new ArgumentOutOfRangeException(nameof(highHz), highHz, $"Edges obey 0 < {lowHz} < {highHz} < {rateHz / 2} Hz.");
        }

        var low = Warp(lowHz, rateHz);
        var high = Warp(highHz, rateHz);
        var bandwidth = high - low;
        var centre = Math.Sqrt(low * high);
        var poles = new List<Complex>(2 * order);
        foreach (var prototype in PrototypePoles(order))
        {
            var half = prototype * bandwidth / 2;
            var spread = Complex.Sqrt((half * half) - (centre * centre));
            poles.Add(half + spread);
            poles.Add(half - spread);
        }

        // Every zero at 0 becomes z = 1, every one at infinity z = -1; the gain follows from both.
        var gain = new Complex(Math.Pow(bandwidth, order), 0);
        foreach (var pole in poles)
        {
            gain /= Two - pole;
        }

        gain *= Math.Pow(2, order);
        return Pair([.. poles.Select(ToDigital)], [.. Enumerable.Repeat(1.0, order), .. Enumerable.Repeat(-1.0, order)], gain.Real);
    }

    private static Complex Two => new(2, 0);

    // Analogue frequencies are in units of the rate, so the bilinear transform is s = 2 (z - 1) / (z + 1).
    private static double Warp(double hz, double rateHz) => 2 * Math.Tan(Math.PI * hz / rateHz);

    private static Complex ToDigital(Complex pole) => (Two + pole) / (Two - pole);

    private static IEnumerable<Complex> PrototypePoles(int order)
    {
        for (var m = -order + 1; m < order; m += 2)
        {
            yield return m == 0 ? new Complex(-1, 0) : -Complex.Exp(new Complex(0, Math.PI * m / (2 * order)));
        }
    }

    private static SecondOrderSection[] Pair(List<Complex> poles, List<double> zeros, double gain)
    {
        var sections = new SecondOrderSection[poles.Count / 2];
        for (var i = sections.Length - 1; i >= 0; i--)
        {
            var first = TakeNearestUnitCircle(poles);
            var second = TakePartner(poles, first);
            var firstZero = TakeNearest(zeros, first);
            var secondZero = TakeNearest(zeros, first);
            sections[i] = new(1, -(firstZero + secondZero), firstZero * secondZero, -(first + second).Real, (first * second).Real);
        }

        var head = sections[0];
        sections[0] = head with { B0 = gain * head.B0, B1 = gain * head.B1, B2 = gain * head.B2 };
        return sections;
    }

    private static Complex TakeNearestUnitCircle(List<Complex> poles)
    {
        var best = 0;
        for (var i = 1; i < poles.Count; i++)
        {
            if (Math.Abs(1 - Complex.Abs(poles[i])) < Math.Abs(1 - Complex.Abs(poles[best])))
            {
                best = i;
            }
        }

        var pole = poles[best];
        poles.RemoveAt(best);
        return pole;
    }

    // A complex pole goes with its conjugate, a real one with the real one nearest the unit circle.
    private static Complex TakePartner(List<Complex> poles, Complex pole)
    {
        const double realBelow = 1e-12;
        if (Math.Abs(pole.Imaginary) > realBelow)
        {
            var conjugate = Complex.Conjugate(pole);
            var partner = poles.MinBy(p => Complex.Abs(p - conjugate));
            poles.Remove(partner);
            return conjugate;
        }

        var real = poles.Where(p => Math.Abs(p.Imaginary) <= realBelow).MinBy(p => Math.Abs(1 - Complex.Abs(p)));
        poles.Remove(real);
        return real;
    }

    private static double TakeNearest(List<double> zeros, Complex pole)
    {
        var nearest = zeros.MinBy(z => Complex.Abs(z - pole));
        zeros.Remove(nearest);
        return nearest;
    }
}
