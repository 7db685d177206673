using PulseStream.Simulation;
using PulseStream.Simulation.Tracks;
using Xunit;

namespace PulseStream.Tests.Simulation;

public sealed class EpisodeTests
{
    private const double Rate = 500;
    private static readonly Scenario Still = Streams.PulseAlone with { Perfusion = Track.Constant(0) };

    [Theory]
    [InlineData("broadband", 0.5)]
    [InlineData("rhythmic", 0.25)]
    [InlineData("pulse", 0.25)]
    public void MotionHasTheStatedPowerAndRatio(string kind, double tolerance)
    {
        var quiet = Streams.PulseAlone with { DurationSeconds = 60 };
        var moved = quiet with { Episodes = Streams.Episode($"motion:all:kind={kind},size=3,ratio=1.4,apart=0") };
        var (red, infrared) = Differences(quiet, moved);
        // A sine three times the pulse's range of 2 % has this deviation.
        Assert.Equal(1, Deviation(infrared) / (3 * 0.02 / Math.Sqrt(8)), tolerance);
        Assert.Equal(1.4, Deviation(red) / Deviation(infrared), 0.01);
    }

    [Fact]
    public void MotionOfOneChannelLeavesTheOtherAlone()
    {
        var moved = Streams.PulseAlone with { Episodes = Streams.Episode("motion:all:channel=red") };
        var (red, infrared) = Differences(Streams.PulseAlone, moved);
        Assert.True(Deviation(red) > 0.005);
        Assert.All(infrared, x => Assert.Equal(0, x));
    }

    [Fact]
    public void NothingPulsatesInALifelessThing()
    {
        var (_, infrared) = Streams.Light(Streams.PulseAlone with { Episodes = Streams.Episode("lifeless:10-20:stir=0") });
        Assert.Equal(0, Streams.LogRange(Streams.Slice(infrared, Rate, 11, 19)));
    }

    [Fact]
    public void LightLeakingPastShrinksThePulseByItsShare()
    {
        var (red, infrared) = Streams.Light(Streams.PulseAlone with { Episodes = Streams.Episode("half-off:10-20:leak=0.5,red=1") });
        Assert.Equal(1 / 1.5, Shrinking(infrared), 0.01);
        Assert.Equal(1 / 2.0, Shrinking(red), 0.01);
    }

    [Fact]
    public void FlickerAboveHalfTheRateFolds()
    {
        var scenario = Still with { RateHz = 100, DurationSeconds = 60, Episodes = Streams.Episode("flicker:all:hz=101.5,percent=2") };
        var (_, infrared) = Streams.Light(scenario);
        // 101.5 Hz read 100 times a second runs through one and a half cycles a second, up through its mean 90 times a minute.
        var middle = (infrared.Max() + infrared.Min()) / 2;
        Assert.Equal(90, infrared.Zip(infrared.Skip(1), (a, b) => a < middle && b >= middle ? 1 : 0).Sum(), 1.0);
        Assert.Equal(0.02, (infrared.Max() - infrared.Min()) / (infrared.Max() / 1.02), 1e-3);
    }

    [Fact]
    public void TheDarkColumnHoldsTheAmbientLight()
    {
        var scenario = Still with { WithAmbientColumn = true, Episodes = Streams.Episode("ambient:10-20:percent=25") };
        var samples = new SimulatedRecording(scenario).Rows().Select(r => r.Sample).ToArray();
        var without = samples[500];
        var with = samples[7500];
        Assert.Equal(0, without.Ambient);
        Assert.Equal(0.25, with.Ambient / without.Infrared, 1e-6);
        Assert.Equal(without.Infrared, with.Infrared - with.Ambient, 1.0);
        Assert.Equal(without.Red, with.Red - with.Ambient, 1.0);
    }

    [Fact]
    public void ASlippingFingerLeaksMoreAndMore()
    {
        var (_, infrared) = Streams.Light(Still with { Episodes = Streams.Episode("slip:5-25") });
        double[] means = [.. new[] { 4, 10, 15, 20 }.Select(s => Streams.Slice(infrared, Rate, s, s + 1).Average())];
        Assert.Equal(means.Order(), means);
        Assert.True(means[3] > 1.2 * means[0]);
    }

    [Fact]
    public void AccelerationFollowsTheMotion()
    {
        var scenario = Streams.PulseAlone with { WithAcceleration = true, Episodes = Streams.Episode("motion:10-20:size=4") };
        var x = new SimulatedRecording(scenario).Rows().Select(r => r.Sample.AccelerationX).ToArray();
        Assert.True(Deviation(Streams.Slice(x, Rate, 11, 19)) > 20 * Deviation(Streams.Slice(x, Rate, 1, 9)));
    }

    private static double Shrinking(double[] light) =>
        Streams.LogRange(Streams.Slice(light, Rate, 12, 18)) / Streams.LogRange(Streams.Slice(light, Rate, 2, 8));

    private static (double[] Red, double[] Infrared) Differences(Scenario quiet, Scenario moved)
    {
        var a = Streams.Light(quiet);
        var b = Streams.Light(moved);
        return (LogRatios(a.Red, b.Red), LogRatios(a.Infrared, b.Infrared));
    }

    private static double[] LogRatios(double[] a, double[] b) => [.. a.Zip(b, (x, y) => Math.Log(x / y))];

    private static double Deviation(double[] values)
    {
        var mean = values.Average();
        return Math.Sqrt(values.Average(x => (x - mean) * (x - mean)));
    }
}
