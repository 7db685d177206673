using PulseStream.Readings;
using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Readings;

/// <summary>A pulse told from movement, weighed against the last calm one.</summary>
public sealed class SinceCalmTests
{
    private const double CalmRatio = 0.6;
    private const double CalmError = 0.004;
    private const double Error = 0.035;
    private static readonly JudgeOptions Options = new();

    [Fact]
    public void SoonAfterACalmSecondItSaysMoreThanTheMeasurement()
    {
        var told = Weighed(0.7, 1);
        Assert.InRange(told.Ratio, CalmRatio, (CalmRatio + 0.7) / 2);
        Assert.InRange(told.StandardError, CalmError, 0.03);
    }

    [Fact]
    public void AMinuteLaterTheMeasurementIsAllThatCounts()
    {
        var told = Weighed(0.7, 60);
        Assert.Equal(0.7, told.Ratio, 0.005);
        Assert.Equal(Error, told.StandardError, 0.001);
    }

    // No weight between the two does better where R wanders as told, and the stated error is the error.
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(10)]
    public void NoOtherWeightIsNearerToARatioThatWanders(int seconds)
    {
        const int tries = 20_000;
        var random = new Random(seconds);
        double told = 0, more = 0, less = 0, stated = 0;
        for (var k = 0; k < tries; k++)
        {
            var truth = CalmRatio + (CalmError * Gauss(random)) + (Math.Sqrt(seconds) * Options.BloodWander * Gauss(random));
            var measured = truth + (Error * Gauss(random));
            var fit = Weighed(measured, seconds);
            told += Square(fit.Ratio - truth);
            more += Square(fit.Ratio + (0.1 * (measured - CalmRatio)) - truth);
            less += Square(fit.Ratio - (0.1 * (measured - CalmRatio)) - truth);
            stated += Square(fit.StandardError);
        }

        Assert.True(told < more && told < less);
        Assert.Equal(1, told / stated, 0.05);
    }

    // A finger that falls by a point each second while it moves is followed a second later and a bit.
    [Fact]
    public void AFastFallIsFollowedLittleMoreThanASecondLater()
    {
        const double pointOfRatio = 0.04;
        for (var second = 1; second < 15; second++)
        {
            var measured = CalmRatio + (second * pointOfRatio);
            Assert.InRange(Weighed(measured, second).Ratio, measured - (1.2 * pointOfRatio), measured);
        }
    }

    private static RatioFit Weighed(double ratio, int secondsSince)
    {
        var since = new SinceCalm(Options);
        since.Remember(At(10, new RatioFit { Ratio = CalmRatio, StandardError = CalmError }));
        return since.Weigh(At(10 + secondsSince, new RatioFit { Ratio = ratio, StandardError = Error, IsSeparated = true })).Fit;
    }

    private static SignalSecond At(long second, RatioFit fit) => new() { SecondIndex = second, Fit = fit };

    private static double Square(double x) => x * x;

    private static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
