namespace PulseStream.Sources.Wire;

/// <summary>The value of each kind of checksum, its size, and its name in a layout file.</summary>
internal static class Checksum
{
    private static readonly (ChecksumKind Kind, string Name, int Bytes, Crc Crc)[] Kinds =
    [
        (ChecksumKind.None, "none", 0, default),
        (ChecksumKind.Sum8, "sum8", 1, default),
        (ChecksumKind.Xor8, "xor8", 1, default),
        (ChecksumKind.Crc8Smbus, "crc8-smbus", 1, new Crc(8, 0x07, 0, IsReflected: false, 0)),
        (ChecksumKind.Crc8Maxim, "crc8-maxim", 1, new Crc(8, 0x31, 0, IsReflected: true, 0)),
        (ChecksumKind.Crc16Ibm3740, "crc16-ibm-3740", 2, new Crc(16, 0x1021, 0xFFFF, IsReflected: false, 0)),
        (ChecksumKind.Crc16Xmodem, "crc16-xmodem", 2, new Crc(16, 0x1021, 0, IsReflected: false, 0)),
        (ChecksumKind.Crc16Kermit, "crc16-kermit", 2, new Crc(16, 0x1021, 0, IsReflected: true, 0)),
        (ChecksumKind.Crc16Modbus, "crc16-modbus", 2, new Crc(16, 0x8005, 0xFFFF, IsReflected: true, 0)),
        (ChecksumKind.Crc32IsoHdlc, "crc32-iso-hdlc", 4, new Crc(32, 0x04C11DB7, 0xFFFFFFFF, IsReflected: true, 0xFFFFFFFF)),
        (ChecksumKind.Crc32Iscsi, "crc32-iscsi", 4, new Crc(32, 0x1EDC6F41, 0xFFFFFFFF, IsReflected: true, 0xFFFFFFFF)),
    ];

    public static string[] Names { get; } = [.. Kinds.Select(known => known.Name)];

    public static ChecksumKind Named(string name) => Kinds.Single(known => known.Name == name).Kind;

    public static int BytesOf(ChecksumKind kind) => Kinds[(int)kind].Bytes;

    public static uint Of(ChecksumKind kind, ReadOnlySpan<byte> bytes) => kind switch
    {
        ChecksumKind.None => 0,
        ChecksumKind.Sum8 => Sum(bytes),
        ChecksumKind.Xor8 => Xor(bytes),
        _ => Kinds[(int)kind].Crc.Of(bytes),
    };

    public static byte Xor(ReadOnlySpan<byte> bytes)
    {
        byte all = 0;
        foreach (var value in bytes)
        {
            all ^= value;
        }

        return all;
    }

    private static uint Sum(ReadOnlySpan<byte> bytes)
    {
        var sum = 0U;
        foreach (var value in bytes)
        {
            sum = (sum + value) & byte.MaxValue;
        }

        return sum;
    }
}
