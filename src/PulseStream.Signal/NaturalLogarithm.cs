using System.Runtime.CompilerServices;
using System.Runtime.Intrinsics;

namespace PulseStream.Signal;

/// <summary>Natural logarithms of two lights at once, the same to the last digit on every processor; the runtime's own differ between libraries.</summary>
/// <remarks>
/// Argument reduction and polynomial of <c>e_log.c</c> in fdlibm (Sun Microsystems, 1993): error below 1 unit in the last
/// place. For positive normal numbers only; NaN stays NaN.
/// </remarks>
internal static class NaturalLogarithm
{
    private const double Ln2High = 6.93147180369123816490e-01;
    private const double Ln2Low = 1.90821492927058770002e-10;
    private const int MantissaBits = 52;
    private const long MantissaMask = (1L << MantissaBits) - 1;
    private const long OneBits = 0x3FF0_0000_0000_0000;

    // The mantissa is taken from √½ to √2, where the polynomial holds.
    private const long RootOfHalfBits = 0x3FE6_A09E_0000_0000;

    // 1.5 × 2^52: a whole number added to its bits is the number itself, plus this.
    private const long WholeBits = 0x4338_0000_0000_0000;
    private const double Whole = 6755399441055744;

    /// <summary>Logarithm of each lane.</summary>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static Vector128<double> Of(Vector128<double> x)
    {
        var bits = x.AsInt64() + Vector128.Create(OneBits - RootOfHalfBits);
        var exponent = Vector128.ShiftRightLogical(bits, MantissaBits) - Vector128.Create(OneBits >> MantissaBits);
        var k = (exponent + Vector128.Create(WholeBits)).AsDouble() - Vector128.Create(Whole);
        var f = ((bits & Vector128.Create(MantissaMask)) + Vector128.Create(RootOfHalfBits)).AsDouble() - Vector128<double>.One;
        var s = f / (f + Vector128.Create(2.0));
        var square = s * s;
        var halfSquare = f * f * 0.5;
        var inner = (s * (halfSquare + Polynomial(square))) + (k * Ln2Low);
        var result = (k * Ln2High) - (halfSquare - inner - f);
        return Vector128.ConditionalSelect(Vector128.Equals(x, x), result, x);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector128<double> Polynomial(Vector128<double> z)
    {
        var w = z * z;
        var even = w * (Vector128.Create(3.999999999940941908e-01)
            + (w * (Vector128.Create(2.222219843214978396e-01) + (w * 1.531383769920937332e-01))));
        var odd = z * (Vector128.Create(6.666666666666735130e-01)
            + (w * (Vector128.Create(2.857142874366239149e-01)
                + (w * (Vector128.Create(1.818357216161805012e-01) + (w * 1.479819860511658591e-01))))));
        return even + odd;
    }
}
