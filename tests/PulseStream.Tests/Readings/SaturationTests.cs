using PulseStream.Readings;
using Xunit;

namespace PulseStream.Tests.Readings;

public sealed class SaturationTests
{
    [Fact]
    public void ASaturationPrintsItsValue() => Assert.Contains("97", new Saturation(97, 96, 98).ToString(), StringComparison.Ordinal);

    [Fact]
    public void WithoutAnIntervalTheValueIsAPoint() => Assert.Equal(new(97, 97, 97), Saturation.WithoutInterval(97).OrPoint());
}
