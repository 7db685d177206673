using PulseStream.Course;
using Xunit;

namespace PulseStream.Tests.Days;

public sealed class AltitudeTests
{
    // ISO 2533:1975, table 5: geometric height, hPa.
    [Theory]
    [InlineData(0, 1013.25)]
    [InlineData(500, 954.613)]
    [InlineData(1500, 845.597)]
    [InlineData(2500, 746.917)]
    [InlineData(5000, 540.483)]
    public void PressureIsThatOfTheStandardAtmosphere(double metres, double hectopascal) =>
        Assert.Equal(hectopascal, Altitude.PressureTorr(metres) * 1013.25 / 760, 0.0006);

    // The equation's own values; Severinghaus, J Appl Physiol 1979;46:599, claims ±0.55 points against his table 1.
    [Theory]
    [InlineData(26.8, 49.8595)]
    [InlineData(40, 74.9465)]
    [InlineData(60, 90.5797)]
    [InlineData(80, 95.7252)]
    [InlineData(100, 97.7465)]
    public void SaturationIsThatOfTheEquation(double torr, double percent) => Assert.Equal(percent, Altitude.SaturationPercent(torr), 0.0001);

    [Theory]
    [InlineData(20, 32.12)]
    [InlineData(40, 74.69)]
    [InlineData(60, 90.85)]
    [InlineData(90, 96.88)]
    [InlineData(150, 98.77)]
    public void SaturationIsCloseToThePublishedTable(double torr, double percent) => Assert.Equal(percent, Altitude.SaturationPercent(torr), 0.55);

    [Fact]
    public void AlveolarOxygenIsThatOfTheFullEquation() => Assert.Equal(101.83, Altitude.AlveolarOxygenTorr(760, 0.21, 40), 0.005);

    // Means of published surveys of people at rest: Med Clin (Barc) 2005;124:172, newcomers and dwellers.
    [Theory]
    [InlineData(0, 98.8)]
    [InlineData(1500, 96.4)]
    [InlineData(2500, 92.3)]
    [InlineData(3000, 89.5)]
    public void WhatPeopleHaveLiesInTheRangeOrAPointBeside(double metres, double mean)
    {
        var (low, high) = Altitude.ExpectedPercent(metres);

        Assert.InRange(mean, low - 1, high + 2);
    }
}
