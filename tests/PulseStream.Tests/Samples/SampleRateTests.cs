using CsCheck;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Samples;

public sealed class SampleRateTests
{
    [Theory]
    [InlineData(24.9)]
    [InlineData(1000.1)]
    [InlineData(double.NaN)]
    public void ARateOutsideItsLimitsIsABug(double hz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SampleRate(hz));

    [Fact]
    public void EverySampleLiesInExactlyOneSecond() =>
        Gen.Select(Gen.Double[25, 1000], Gen.Long[0, 100_000_000]).Sample((hz, index) =>
        {
            var rate = new SampleRate(hz);
            var second = rate.SecondOf(index);
            return rate.FirstIndexOf(second) <= index && index < rate.FirstIndexOf(second + 1);
        });
}
