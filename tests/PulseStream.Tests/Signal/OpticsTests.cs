using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Tests.Readings;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>Ratio of ratios from light whose blood is known; source in tests/vectors/optics/SOURCE.md.</summary>
public sealed class OpticsTests
{
    // The published ratios have five decimals.
    private const double RatioTolerance = 1e-5;

    // The inverse of the theory is exact but for rounding.
    private const double TheoryTolerance = 0.001;

    // 0.05 points on the textbook line, below anything that an oximeter shows.
    private const double MeasuredTolerance = 2e-3;
    private const double RateHz = 100;
    private const double Perfusion = 0.01;

    public static TheoryData<double> Saturations => [97, 90, 85, 70];

    [Theory]
    [MemberData(nameof(Saturations))]
    public void LogarithmsOfLightGiveTheTabulatedRatio(double percent)
    {
        var ratio = RatioOf(percent);
        Assert.Equal(Published(percent), ratio, RatioTolerance);
        Assert.Equal(percent, BloodLight.TheoryPercent(ratio), TheoryTolerance);
    }

    [Theory]
    [MemberData(nameof(Saturations))]
    public void EverySecondOfAPulseTrainHasTheTabulatedRatio(double percent)
    {
        var design = new SignalDesign(new SampleRate(RateHz), new SignalOptions());
        var signal = new FingerSignal(design, SampleColumns.Red | SampleColumns.Infrared, null);
        List<double> ratios = [];
        foreach (var sample in PulseTrain(percent).Select(sample => sample!.Value))
        {
            if (signal.TryStep(sample, out var second) && second.Fit.WindowSeconds > 0)
            {
                ratios.Add(second.Fit.Ratio);
            }
        }

        Assert.True(ratios.Count > 20);
        Assert.All(ratios, ratio => Assert.Equal(Published(percent), ratio, MeasuredTolerance));
    }

    [Theory]
    [MemberData(nameof(Saturations))]
    public void TheTheoreticalCurveReadsTheBloodBack(double percent)
    {
        const double tolerance = 0.1;
        var ratios = Enumerable.Range(0, 201).Select(i => 0.25 + (0.01 * i)).ToArray();
        var curve = CalibrationCurve.OfTable(
            "theory-660-940", ratios, [.. ratios.Select(BloodLight.TheoryPercent)], 0.25, 2.25, null, "Beer-Lambert, Prahl's table");
        var heard = Heard.Of(RateHz, [.. PulseTrain(percent)], curve: curve);
        Assert.NotEmpty(heard.Readings);
        Assert.All(heard.Usable, second => Assert.Equal(percent, second.Spo2!.Value.Percent, tolerance));
    }

    [Fact]
    public void AtARatioOf1TheTextbookLineSays85AndTheTheory73Point9()
    {
        Assert.Equal(85, CalibrationCurve.TextbookLine.PercentAt(1), TheoryTolerance);
        Assert.Equal(73.905, BloodLight.TheoryPercent(1), TheoryTolerance);
    }

    private static double Published(double percent) =>
        double.Parse(Vectors.Rows("optics", "ratios.csv").Single(row => double.Parse(row[0]) == percent)[1]);

    private static double RatioOf(double percent)
    {
        var more = BloodLight.Behind(BloodLight.BloodOf(2 * Perfusion, percent), percent);
        var less = BloodLight.Behind(BloodLight.BloodOf(Perfusion, percent), percent);
        return Math.Log(less.Red / more.Red) / Math.Log(less.Infrared / more.Infrared);
    }

    private static IEnumerable<Sample?> PulseTrain(double percent)
    {
        for (var n = 0; n < 30 * RateHz; n++)
        {
            var volume = Perfusion * (1 + Finger.Volume(n / RateHz * 72 / 60));
            var light = BloodLight.Behind(BloodLight.BloodOf(volume, percent), percent);
            yield return Sample.OfLight(light.Red, light.Infrared);
        }
    }
}
