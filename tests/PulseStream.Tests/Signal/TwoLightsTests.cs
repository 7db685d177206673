using PulseStream.Samples;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

public sealed class TwoLightsTests
{
    [Theory]
    [InlineData(-3, 1)]
    [InlineData(0.5, 1)]
    [InlineData(70_000, 70_000)]
    [InlineData(1e20, TwoLights.LargestCounts)]
    [InlineData(double.NaN, double.NaN)]
    public void LightIsBoundedAndWhatIsNoNumberStaysNone(double counts, double expected)
    {
        var light = TwoLights.Of(Sample.OfLight(counts, 80_000), hasRed: true);
        Assert.Equal(80_000, light[0]);
        Assert.Equal(expected, light[1]);
    }
}
