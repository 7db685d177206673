using CsCheck;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Samples;

public sealed class SampleRateTests
{
    [Theory]
    [InlineData(23.9)]
    [InlineData(1040.1)]
    [InlineData(double.NaN)]
    public void ARateOutsideItsLimitsIsABug(double hz) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new SampleRate(hz));

    // A clock without a crystal, 4 % slow at the slowest rate that can be told and 4 % fast at the fastest.
    [Theory]
    [InlineData(24)]
    [InlineData(24.5)]
    [InlineData(1040)]
    public void AMeasuredRateMayBeOffByWhatAClockIs(double hz) => Assert.Equal(hz, new SampleRate(hz).Hz);

    [Fact]
    public void EverySampleLiesInExactlyOneSecond() =>
        Gen.Select(Gen.Double[25, 1000], Gen.Long[0, 100_000_000]).Sample((hz, index) =>
        {
            var rate = new SampleRate(hz);
            var second = rate.SecondOf(index);
            return rate.FirstIndexOf(second) <= index && index < rate.FirstIndexOf(second + 1);
        });
}
