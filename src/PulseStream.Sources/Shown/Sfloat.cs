namespace PulseStream.Sources.Shown;

/// <summary>
/// The 16-bit number of medical instruments: a signed exponent of ten in the upper four bits, a signed mantissa in the lower
/// twelve. Source: IEEE 11073-20601, SFLOAT-Type. Its five special values are whole words: with another exponent the same
/// mantissas are ordinary numbers.
/// </summary>
public static class Sfloat
{
    private const ushort NotANumber = 0x07FF;
    private const ushort PositiveInfinity = 0x07FE;
    private const ushort NotAtThisResolution = 0x0800;
    private const ushort Reserved = 0x0801;
    private const ushort NegativeInfinity = 0x0802;
    private const int MantissaBits = 12;

    /// <summary>The number; NaN for "not a number", "not at this resolution" and the reserved word.</summary>
    /// <param name="word">The 16 bits.</param>
    public static double Decode(ushort word)
    {
        switch (word)
        {
            case NotANumber or NotAtThisResolution or Reserved:
                return double.NaN;
            case PositiveInfinity:
                return double.PositiveInfinity;
            case NegativeInfinity:
                return double.NegativeInfinity;
            default:
                var exponent = Signed(word >> MantissaBits, bits: 4);
                var mantissa = Signed(word & ((1 << MantissaBits) - 1), MantissaBits);

                // Divided by an exact power of ten: 975 and -1 are 97.5, the nearest double and no other.
                return exponent < 0 ? mantissa / Math.Pow(10, -exponent) : mantissa * Math.Pow(10, exponent);
        }
    }

    private static int Signed(int value, int bits) => value < 1 << (bits - 1) ? value : value - (1 << bits);
}
