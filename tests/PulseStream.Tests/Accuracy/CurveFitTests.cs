using PulseStream.Accuracy.Calibration;
using PulseStream.Accuracy.Optics;
using PulseStream.Readings.Curves;
using PulseStream.Samples;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Accuracy;

public sealed class CurveFitTests
{
    [Fact]
    public void PairsOnALineGiveTheLine()
    {
        var fit = CurveFit.Of([.. Pairs(8, 20, s => (110 - s) / 25, 0, 1)], "hut.csv");

        Assert.Equal(1, fit.Chosen.Degree);
        Assert.Equal(110, fit.Coefficients[0], 1e-6);
        Assert.Equal(-25, fit.Coefficients[1], 1e-6);
        Assert.Equal(0, fit.Chosen.Arms, 1e-6);
    }

    [Fact]
    public void ABentCurveNeedsASecondPower()
    {
        var fit = CurveFit.Of([.. Pairs(10, 30, Bent, 0.002, 2)], "hut.csv");

        Assert.Equal(2, fit.Chosen.Degree);
        for (var ratio = 0.55; ratio < 1.5; ratio += 0.1)
        {
            Assert.Equal(112 - (15 * ratio) - (9 * ratio * ratio), fit.PercentAt(ratio), 0.3);
        }
    }

    [Fact]
    public void AMinorityOfWildPairsDoesNotPull()
    {
        var pairs = Pairs(10, 30, s => (110 - s) / 25, 0.01, 3).ToArray();
        for (var i = 0; i < pairs.Length; i += 8)
        {
            pairs[i] = pairs[i] with { Ratio = 2.5 };
        }

        var fit = CurveFit.Of(pairs, "hut.csv");

        Assert.Equal(38, fit.Outliers);
        Assert.Equal(85, fit.PercentAt(1), 0.2);
        Assert.InRange(fit.To, 1.4, 1.7);
        Assert.InRange(fit.Chosen.Arms, 0.2, 0.35);
        Assert.True(fit.Chosen.ArmsOfAll > 5);
    }

    [Fact]
    public void ACurveFallsAllTheWayThoughThePairsRiseInPlaces()
    {
        // A shelf between R 0.8 and 1.2 with a bump on it: the best free cubic rises there.
        var pairs = Enumerable.Range(0, 6).SelectMany(subject => Enumerable.Range(0, 40).Select(i =>
        {
            var ratio = 0.4 + (i * 0.03);
            var reference = ratio < 0.8 ? 100 - (25 * (ratio - 0.4)) : ratio < 1.2 ? 88 + (6 * (ratio - 0.8)) : 88 - (40 * (ratio - 1.2));
            return new RatioPair($"s{subject}", reference, ratio);
        })).ToArray();

        var curve = CurveFit.Of(pairs, "hut.csv").ToCurve("shelf", "test");

        // The reader of curve files refuses one that rises anywhere.
        var read = CurveFile.Parse(System.Text.Encoding.UTF8.GetBytes(CurveFile.Format(curve)), "curve.json");
        Assert.Equal(curve.PercentAt(0.9), read.PercentAt(0.9));
    }

    [Fact]
    public void UnseenSubjectsAreJudgedByTheOthers()
    {
        // One subject's ratios are off by 0.1, worth 2.5 points; the others agree.
        var pairs = Pairs(10, 20, s => (110 - s) / 25, 0.01, 4).Select(pair => pair.Subject == "s0" ? pair with { Ratio = pair.Ratio + 0.1 } : pair).ToArray();

        var fit = CurveFit.Of(pairs, "hut.csv");

        var expected = Math.Sqrt(((0.25 * 0.25 * 9) + ((2.5 * 2.5) + (0.25 * 0.25))) / 10);
        Assert.Equal(expected, fit.Chosen.ArmsOfAll, 0.1);
    }

    [Theory]
    [InlineData(4, 70, 1, "4 subjects")]
    [InlineData(1, 70, 1, "1 subject,")]
    [InlineData(8, 95, 1, "span")]
    [InlineData(8, 70, -1, "does not fall")]
    public void WhatCannotBeFittedSaysWhatIsMissing(int subjects, double lowest, int sign, string words)
    {
        var pairs = Pairs(subjects, 20, s => sign > 0 ? (110 - s) / 25 : (s - 50) / 25, 0.01, 5, lowest).ToArray();

        var problem = Assert.Throws<BadInputException>(() => CurveFit.Of(pairs, "hut.csv"));

        Assert.StartsWith("hut.csv: ", problem.Message, StringComparison.Ordinal);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(660, 940, 100, 0.26326)]
    [InlineData(660, 940, 85, 0.66523)]
    [InlineData(660, 940, 70, 1.12654)]
    [InlineData(660, 880, 90, 0.54920)]
    [InlineData(660, 905, 97, 0.34059)]
    public void TheoryGivesThePublishedRatios(double red, double infrared, double percent, double ratio)
    {
        var theory = TheoreticalCurve.Of(red, infrared);

        Assert.Equal(ratio, theory.RatioAt(percent / 100), 5e-6);
        Assert.Equal(percent, theory.PercentAt(theory.RatioAt(percent / 100)), 1e-9);
        Assert.Equal(percent, theory.ToCurve().PercentAt(theory.RatioAt(percent / 100)), 1e-3);
    }

    [Theory]
    [InlineData(940, 660)]
    [InlineData(599, 940)]
    [InlineData(660, double.NaN)]
    public void WavelengthsThatGiveNoCurveAreRefused(double red, double infrared) =>
        Assert.Throws<BadInputException>(() => TheoreticalCurve.Of(red, infrared));

    [Fact]
    public void TheCommandWritesACurveThatOtherCommandsTake()
    {
        using var folder = new TemporaryFolder();
        var csv = "subject,reference,ratio\n" + string.Concat(Pairs(8, 20, s => (110 - s) / 25, 0, 1).Select(pair => $"{pair.Subject},{pair.Reference},{pair.Ratio}\n"));
        var curve = folder["hut-curve.json"];

        var run = ProgramRun.Of("calibrate", folder.Write("hut.csv", csv), "--out", curve, "--format", "ndjson", "--quiet");

        Assert.Equal(0, run.Status);
        var line = System.Text.Json.JsonDocument.Parse(Assert.Single(run.Lines)).RootElement;
        Assert.Equal((1, 160, 8), (line.GetProperty("degree").GetInt32(), line.GetProperty("n").GetInt32(), line.GetProperty("subjects").GetInt32()));
        Assert.Equal(2, line.GetProperty("coefficients").GetArrayLength());
        Assert.True(line.GetProperty("from").GetDouble() < line.GetProperty("to").GetDouble());
        var replay = ProgramRun.Of("replay", Recordings.WarmFinger, "--curve", curve, "--format", "ndjson", "--quiet");
        Assert.Equal(0, replay.Status);
        Assert.Equal("hut", replay.Objects("session").Single().GetProperty("curve").GetString());
    }

    [Theory]
    [InlineData("calibrate")]
    [InlineData("calibrate", "--theory", "660")]
    [InlineData("calibrate", "--theory", "660,1200")]
    [InlineData("calibrate", "no-such.csv")]
    public void AWrongCommandLineIsOneSentence(params string[] args) => ProgramRun.Of(args).IsRefused();

    private static double Bent(double percent)
    {
        var (low, high) = (0.1, 3.0);
        while (high - low > 1e-12)
        {
            var middle = (low + high) / 2;
            (low, high) = 112 - (15 * middle) - (9 * middle * middle) > percent ? (middle, high) : (low, middle);
        }

        return low;
    }

    private static IEnumerable<RatioPair> Pairs(int subjects, int each, Func<double, double> ratioOf, double noise, int seed, double lowest = 70)
    {
        var chance = new Random(seed);
        for (var subject = 0; subject < subjects; subject++)
        {
            for (var i = 0; i < each; i++)
            {
                var percent = lowest + ((100 - lowest) * chance.NextDouble());
                yield return new($"s{subject}", percent, ratioOf(percent) + (noise * SimulatedStudies.Normal(chance)));
            }
        }
    }
}
