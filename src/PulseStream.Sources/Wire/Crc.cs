namespace PulseStream.Sources.Wire;

/// <summary>A cyclic redundancy check by its parameters (Williams, A painless guide to CRC error detection algorithms, 1993).</summary>
/// <param name="Bits">Width: 8, 16 or 32.</param>
/// <param name="Polynomial">Without its highest term.</param>
/// <param name="Initial">The register before the first byte.</param>
/// <param name="IsReflected">Whether bytes enter, and the register leaves, lowest bit first.</param>
/// <param name="FinalXor">Joined to the register at the end.</param>
internal readonly record struct Crc(int Bits, uint Polynomial, uint Initial, bool IsReflected, uint FinalXor)
{
    private const int BitsPerByte = 8;

    public uint Of(ReadOnlySpan<byte> bytes) => (IsReflected ? LowestBitFirst(bytes) : HighestBitFirst(bytes)) ^ FinalXor;

    private uint HighestBitFirst(ReadOnlySpan<byte> bytes)
    {
        var highest = 1U << (Bits - 1);
        var all = highest | (highest - 1);
        var register = Initial;
        foreach (var value in bytes)
        {
            register ^= (uint)value << (Bits - BitsPerByte);
            for (var bit = 0; bit < BitsPerByte; bit++)
            {
                register = ((register & highest) != 0 ? (register << 1) ^ Polynomial : register << 1) & all;
            }
        }

        return register;
    }

    private uint LowestBitFirst(ReadOnlySpan<byte> bytes)
    {
        var polynomial = Reverse(Polynomial);
        var register = Reverse(Initial);
        foreach (var value in bytes)
        {
            register ^= value;
            for (var bit = 0; bit < BitsPerByte; bit++)
            {
                register = (register & 1) != 0 ? (register >> 1) ^ polynomial : register >> 1;
            }
        }

        return register;
    }

    private uint Reverse(uint value)
    {
        var reversed = 0U;
        for (var bit = 0; bit < Bits; bit++)
        {
            reversed = (reversed << 1) | ((value >> bit) & 1);
        }

        return reversed;
    }
}
