using System.Text;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Framing;
using Xunit;

namespace PulseStream.Tests.Sources.Wire;

/// <summary>
/// Values from outside. CRC: the check values of the RevEng catalogue of parametrised CRC algorithms, over "123456789".
/// COBS: the test vectors of cobs-python (MIT) and the packet of Cheshire and Baker's paper. SLIP: RFC 1055.
/// </summary>
public sealed class PublishedValueTests
{
    private static readonly byte[] Check = "123456789"u8.ToArray();

    [Theory]
    [InlineData(ChecksumKind.Crc8Smbus, 0xF4)]
    [InlineData(ChecksumKind.Crc8Maxim, 0xA1)]
    [InlineData(ChecksumKind.Crc16Ibm3740, 0x29B1)]
    [InlineData(ChecksumKind.Crc16Xmodem, 0x31C3)]
    [InlineData(ChecksumKind.Crc16Kermit, 0x2189)]
    [InlineData(ChecksumKind.Crc16Modbus, 0x4B37)]
    [InlineData(ChecksumKind.Crc32IsoHdlc, 0xCBF43926)]
    [InlineData(ChecksumKind.Crc32Iscsi, 0xE3069283)]
    public void EachCrcHasItsCheckValue(ChecksumKind kind, uint expected) => Assert.Equal(expected, Checksum.Of(kind, Check));

    // By hand: 0x31 + … + 0x39 = 477 = 0x1DD, and 0x31 ^ … ^ 0x39 = 0x31.
    [Theory]
    [InlineData(ChecksumKind.Sum8, 0xDD)]
    [InlineData(ChecksumKind.Xor8, 0x31)]
    [InlineData(ChecksumKind.None, 0)]
    public void SumAndXorAreWhatTheirNamesSay(ChecksumKind kind, uint expected) => Assert.Equal(expected, Checksum.Of(kind, Check));

    public static TheoryData<string, string> CobsPairs => new()
    {
        { "", "01" },
        { "00", "0101" },
        { "0000", "010101" },
        { "31", "0231" },
        { "3132333435", "063132333435" },
        { "31323334350036373839", "0631323334350536373839" },
        { "0031323334350036373839", "010631323334350536373839" },
        { "3132333435003637383900", "063132333435053637383901" },
        { Run(0x01, 0xFD), "FE" + Run(0x01, 0xFD) },
        { Run(0x01, 0xFE), "FF" + Run(0x01, 0xFE) },
        { Run(0x01, 0xFF), "FF" + Run(0x01, 0xFE) + "02FF" },
        { Run(0x00, 0xFF), "01FF" + Run(0x01, 0xFE) + "02FF" },
        { "4500002C4C79000040064F37", "024501042C4C79010540064F37" },
    };

    [Theory]
    [MemberData(nameof(CobsPairs))]
    public void CobsGivesThePublishedBytesBothWays(string plain, string stuffed)
    {
        Assert.Equal(stuffed, Convert.ToHexString(Cobs.Encode(Convert.FromHexString(plain))));
        Assert.Equal(plain, Unstuffed(stuffed));
    }

    [Fact]
    public void CobsReadsTheLongFormOfAFullBlockToo() => Assert.Equal(Run(0x01, 0xFE), Unstuffed("FF" + Run(0x01, 0xFE) + "01"));

    [Theory]
    [InlineData("00")]
    [InlineData("05313233")]
    [InlineData("053132333400")]
    [InlineData("0531320034")]
    [InlineData("")]
    public void CobsRefusesWhatItCannotBe(string stuffed) => Assert.Null(Unstuffed(stuffed));

    [Fact]
    public void SlipEscapesAsTheRfcSays()
    {
        Assert.Equal("0102DBDCDBDD03", Convert.ToHexString(Slip.Encode([0x01, 0x02, 0xC0, 0xDB, 0x03])));
        var plain = new byte[7];

        Assert.True(Slip.TryDecode(Convert.FromHexString("0102DBDCDBDD03"), plain, out var length));

        Assert.Equal("0102C0DB03", Convert.ToHexString(plain.AsSpan(0, length)));
    }

    [Theory]
    [InlineData("DB")]
    [InlineData("01DB02")]
    public void SlipRefusesAnEscapeOfNothing(string escaped) =>
        Assert.False(Slip.TryDecode(Convert.FromHexString(escaped), new byte[escaped.Length], out _));

    private static string Run(int from, int to) =>
        Enumerable.Range(from, to - from + 1).Aggregate(new StringBuilder(), (text, value) => text.Append($"{value:X2}")).ToString();

    private static string? Unstuffed(string stuffed)
    {
        var plain = new byte[(stuffed.Length / 2) + 1];
        return Cobs.TryDecode(Convert.FromHexString(stuffed), plain, out var length) ? Convert.ToHexString(plain.AsSpan(0, length)) : null;
    }
}
