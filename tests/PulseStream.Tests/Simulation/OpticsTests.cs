using CsCheck;
using PulseStream.Simulation.Blood;
using PulseStream.Simulation.Tracks;
using Xunit;

namespace PulseStream.Tests.Simulation;

public sealed class OpticsTests
{
    // Counts of 24 bits: half a count over a pulse of 0.5 % of half the scale, both ends of both channels.
    private const double RatioTolerance = 1e-4;

    // Percent of the perfusion: sampling misses the top of a beat, and the mean of exp is taken to first order.
    private const double PerfusionTolerance = 0.005;

    [Fact]
    public void TheLogarithmsOfEachBeatObeyTheTextbookLine() =>
        Gen.Select(Gen.Double[70, 100], Gen.Double[0.5, 10], Gen.Double[35, 200]).Sample(
            (spo2, perfusion, pulse) =>
            {
                var (red, infrared) = Streams.Light(Streams.PulseAlone with
                {
                    DurationSeconds = 4,
                    Spo2 = Track.Constant(spo2),
                    Perfusion = Track.Constant(perfusion),
                    Pulse = Track.Constant(pulse),
                });
                var ratio = Streams.LogRange(red) / Streams.LogRange(infrared);
                return Math.Abs(ratio - ((110 - spo2) / 25)) < RatioTolerance;
            },
            iter: 50);

    [Theory]
    [InlineData(0.1)]
    [InlineData(2)]
    [InlineData(10)]
    [InlineData(20)]
    public void InfraredPeakToTroughOverMeanIsThePerfusion(double perfusion)
    {
        var (_, infrared) = Streams.Light(Streams.PulseAlone with { Perfusion = Track.Constant(perfusion) });
        var measured = 100 * (infrared.Max() - infrared.Min()) / infrared.Average();
        Assert.Equal(1, measured / perfusion, PerfusionTolerance);
    }

    // Ratios of the Prahl table at 660 and 940 nm, computed outside from its published extinctions, five digits.
    [Theory]
    [InlineData(100, 0.26326)]
    [InlineData(97, 0.33946)]
    [InlineData(90, 0.52524)]
    [InlineData(85, 0.66523)]
    [InlineData(70, 1.12654)]
    [InlineData(50, 1.85912)]
    public void ExtinctionsGiveTheTheoreticalRatio(double spo2, double ratio) =>
        Assert.Equal(ratio, RatioModel.Extinction660And940.RatioAt(spo2), 1e-5);

    // SpO2 = 110 − 25 R at its own values (Webster, Design of Pulse Oximeters, 1997).
    [Theory]
    [InlineData(100, 0.4)]
    [InlineData(95, 0.6)]
    [InlineData(85, 1.0)]
    [InlineData(70, 1.6)]
    public void TheLineGivesItsOwnValues(double spo2, double ratio) =>
        Assert.Equal(ratio, RatioModel.Line.RatioAt(spo2), 1e-12);

    [Fact]
    public void WhiteNoiseHasTheStatedShareOfTheLight()
    {
        var (_, infrared) = Streams.Light(Streams.PulseAlone with { Perfusion = Track.Constant(0), Noise = 1e-4 });
        var mean = infrared.Average();
        var deviation = Math.Sqrt(infrared.Average(x => (x - mean) * (x - mean))) / mean;
        // 15,000 samples know their deviation to 0.6 %; five times that.
        Assert.Equal(1, deviation / 1e-4, 0.03);
    }

    [Fact]
    public void CountsAreWholeAndStayWithinTheConverter()
    {
        var (red, infrared) = Streams.Light(Streams.PulseAlone with
        {
            Bits = 10,
            Noise = 0.01,
            Episodes = Streams.Episode("clip:5-10:brightness=3"),
        });
        Assert.All(red.Concat(infrared), x => Assert.True(x == Math.Floor(x) && x is >= 0 and <= 1023));
        Assert.All(Streams.Slice(infrared, 500, 6, 9), x => Assert.Equal(1023, x));
        Assert.All(Streams.Slice(infrared, 500, 0, 4.9), x => Assert.True(x < 1023));
    }
}
