using System.Buffers.Binary;
using System.Diagnostics;
using System.Numerics;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PulseStream.Sources.Csv;

/// <summary>
/// Reads a number of digits and a decimal point alone, up to eight bytes at a time, to the same double as
/// <see cref="CsvNumber"/> does. Whatever is longer or looks otherwise is left to that.
/// </summary>
internal static class PlainNumber
{
    /// <summary>Bytes that must stand behind the place where a number is read.</summary>
    public const int LongestText = 3 * EightBytes;

    private const int EightBytes = sizeof(ulong);

    // Seven digits before the point and seven behind it stay below 2^53: one division then rounds once, correctly.
    private static readonly double[] PowersOfTen = [1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7];

    /// <summary>Reads the number that opens <paramref name="text"/> at a place and moves the place behind it.</summary>
    /// <returns>False where that is no plain number: the place then says nothing.</returns>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static bool TryTake(ReadOnlySpan<byte> text, ref int at, out double value)
    {
        var count = TakeDigits(text, ref at, out var whole);
        value = whole;
        if (text[at] != '.')
        {
            return count is > 0 and < EightBytes;
        }

        at++;
        var decimals = TakeDigits(text, ref at, out var part);
        if (count == EightBytes || decimals == EightBytes || count + decimals == 0)
        {
            return false;
        }

        value = ((value * PowersOfTen[decimals]) + part) / PowersOfTen[decimals];
        return true;
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int TakeDigits(ReadOnlySpan<byte> text, ref int at, out long digits)
    {
        // Unchecked: PlainRows begins no row that has not LongestText bytes to each of its fields, and none moves the place by more.
        // Behind a sign, eight digits and a point, which are ten bytes, eight of these are still there.
        Debug.Assert(text.Length - at >= EightBytes);
        var eight = BinaryPrimitives.ReadUInt64LittleEndian(MemoryMarshal.CreateReadOnlySpan(ref Unsafe.Add(ref MemoryMarshal.GetReference(text), at), EightBytes));
        var count = LeadingDigits(eight);
        digits = ValueOf(eight, count);
        at += count;
        return count;
    }

    // Each addition and subtraction leaves the top bit of a byte clear for a digit alone; a carry spoils only bytes behind
    // the first that is none.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static int LeadingDigits(ulong eight) =>
        BitOperations.TrailingZeroCount(unchecked((eight + 0x4646464646464646) | (eight - 0x3030303030303030)) & 0x8080808080808080) >>> 3;

    // Neighbours are joined to numbers of two digits, these to four, and these to eight; zero bytes go before the first
    // digit. Shifted twice by half, because a shift by all 64 bits would be none.
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static long ValueOf(ulong eight, int count)
    {
        unchecked
        {
            var half = 4 * (EightBytes - count);
            var digits = (eight << half << half) & 0x0F0F0F0F0F0F0F0F;
            digits = ((digits * 10) + (digits >> 8)) & 0x00FF00FF00FF00FF;
            digits = ((digits * 100) + (digits >> 16)) & 0x0000FFFF0000FFFF;
            return (long)(((digits * 10_000) + (digits >> 32)) & 0xFFFFFFFF);
        }
    }
}
