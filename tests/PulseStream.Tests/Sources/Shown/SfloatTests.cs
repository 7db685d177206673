using PulseStream.Sources.Shown;
using Xunit;

namespace PulseStream.Tests.Sources.Shown;

/// <summary>Words with their values: HL7, Personal Health Device Implementation Guide, "FLOATS", which restates IEEE 11073-20601.</summary>
public sealed class SfloatTests
{
    [Theory]
    [InlineData(0x0002, 2.0)]
    [InlineData(0xF014, 2.0)]
    [InlineData(0xE0C8, 2.0)]
    [InlineData(0x1002, 20.0)]
    [InlineData(0x2002, 200.0)]
    [InlineData(0x00C8, 200.0)]
    [InlineData(0x04D2, 1234.0)]
    [InlineData(0x0B2E, -1234.0)]
    [InlineData(0xF3C5, 96.5)]
    public void OrdinaryWordsAreExact(int word, double value) => Assert.Equal(value, Sfloat.Decode((ushort)word));

    [Theory]
    [InlineData(0x07FF, double.NaN)]
    [InlineData(0x07FE, double.PositiveInfinity)]
    [InlineData(0x0802, double.NegativeInfinity)]
    [InlineData(0x0800, double.NaN)]
    [InlineData(0x0801, double.NaN)]
    public void SpecialWordsAreNoNumbers(int word, double value) => Assert.Equal(value, Sfloat.Decode((ushort)word));

    [Theory]
    [InlineData(0xF7FF, 204.7)]
    [InlineData(0xF800, -204.8)]
    [InlineData(0x17FE, 20460.0)]
    public void WithAnExponentTheSameMantissasAreOrdinary(int word, double value) => Assert.Equal(value, Sfloat.Decode((ushort)word));

    [Fact]
    public void EveryWordIsEitherSpecialOrItsMantissaTimesAPowerOfTen()
    {
        var special = 0;
        for (var word = 0; word <= ushort.MaxValue; word++)
        {
            var mantissa = (word & 0x7FF) - (word & 0x800);
            var exponent = (word >> 12) - (word >> 15 << 4);
            var value = Sfloat.Decode((ushort)word);
            special += double.IsFinite(value) ? 0 : 1;

            // One rounding of a quotient or a product of two exact numbers.
            Assert.True(!double.IsFinite(value) || value == double.Parse($"{mantissa}e{exponent}", System.Globalization.CultureInfo.InvariantCulture) + 0.0, $"{word:X4}: {value}");
        }

        Assert.Equal(5, special);
    }
}
