using System.Text;
using PulseStream.Readings;
using PulseStream.Readings.Curves;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Cli;

public sealed class CurveFileTests
{
    [Fact]
    public void CoefficientsAscendInPowersOfR()
    {
        var curve = Parse("""{ "name": "bench", "coefficients": [100, -5, -10], "from": 0.2, "to": 2, "arms": 2.1, "source": "bench run", }""");

        // 100 − 5 · 2 − 10 · 2², by hand.
        Assert.Equal(50, curve.PercentAt(2));
        Assert.Equal(("bench", 0.2, 2.0, 2.1, "bench run"), (curve.Name, curve.FromRatio, curve.ToRatio, curve.ArmsPercent, curve.Source));
    }

    [Fact]
    public void ATableIsLinearBetweenItsPoints() =>
        Assert.Equal(92.5, Parse("""{ "name": "t", "table": [[0.4, 100], [0.8, 90], [1.2, 85]], "from": 0.4, "to": 1.2 }""").PercentAt(0.7), precision: 9);

    [Fact]
    public void WithoutCoefficientsAndTableItIsTheTextbookLine() =>
        Assert.Equal(85, Parse("""{ "name": "d", "from": 0.4, "to": 2.4 }""").PercentAt(1));

    [Theory]
    [InlineData("""{ "name": "t", "coefficients": [108.5, -24.1, -0.3], "from": 0.4, "to": 2, "arms": 1.9, "source": "s" }""")]
    [InlineData("""{ "name": "t", "table": [[0.4, 100], [0.8, 90.25]], "from": 0.4, "to": 0.8, "source": "s" }""")]
    public void WhatIsWrittenReadsBackEqual(string json)
    {
        var curve = Parse(json);

        Assert.Equal(CurveFile.Format(curve), CurveFile.Format(Parse(CurveFile.Format(curve))));
        Assert.Equal(curve.PercentAt(0.61), Parse(CurveFile.Format(curve)).PercentAt(0.61));
    }

    [Theory]
    [InlineData("""[]""", "an object")]
    [InlineData("""{""", "line 1")]
    [InlineData("""{ "from": 0.4, "to": 2 }""", "name")]
    [InlineData("""{ "name": "x", "to": 2 }""", "from")]
    [InlineData("""{ "name": "x", "from": 2, "to": 2 }""", "to")]
    [InlineData("""{ "name": "x", "from": "0", "to": 2 }""", "from")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 2, "coeficients": [1, 2] }""", "coeficients")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 2, "coefficients": [97] }""", "coefficients")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 2, "coefficients": [110, 25] }""", "falls")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 2, "coefficients": [110, 1e999] }""", "coefficients")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 2, "arms": -1 }""", "arms")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 0.8, "table": [[0.4, 100], [0.8, 90]], "coefficients": [110, -25] }""", "both")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 2, "table": [[0.4, 100], [0.8, 90]] }""", "table")]
    [InlineData("""{ "name": "x", "from": 0.4, "to": 0.8, "table": [[0.8, 90], [0.4, 100]] }""", "table[1]")]
    [InlineData("""{ "name": "x", "name": "y", "from": 0.4, "to": 2 }""", "twice")]
    public void AWrongFileIsOneSentenceThatNamesTheMember(string json, string named)
    {
        var problem = Assert.Throws<BadInputException>(() => Parse(json));

        Assert.StartsWith("curve.json", problem.Message, StringComparison.Ordinal);
        Assert.Contains(named, problem.Message, StringComparison.Ordinal);
    }

    private static CalibrationCurve Parse(string json) => CurveFile.Parse(Encoding.UTF8.GetBytes(json), "curve.json");
}
