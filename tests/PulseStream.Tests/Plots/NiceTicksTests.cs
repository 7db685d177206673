using CsCheck;
using PulseStream.Plots;
using Xunit;

namespace PulseStream.Tests.Plots;

public class NiceTicksTests
{
    [Fact]
    public void TicksAreRoundAndInside()
    {
        Assert.Equal([92, 94, 96, 98], NiceTicks.Between(91.3, 98.2, 5));
        Assert.Equal([-1, -0.5, 0, 0.5, 1], NiceTicks.Between(-1.2, 1.2, 6));
    }

    [Fact]
    public void TimesAreWholeMinutesWhereSecondsGrowMany() =>
        Assert.Equal([0, 1200, 2400, 3600, 4800, 6000, 7200], NiceTicks.Times(7200, 10));

    [Fact]
    public void ThereAreNeverMoreStepsThanAskedFor() =>
        Gen.Select(Gen.Double[-1000, 1000], Gen.Double[1e-3, 1e6], Gen.Int[1, 20]).Sample((low, span, atMost) =>
        {
            Assert.InRange(NiceTicks.Between(low, low + span, atMost).Length, 0, atMost + 1);
            Assert.InRange(NiceTicks.Times(span, atMost).Length, 1, atMost + 1);
        });
}
