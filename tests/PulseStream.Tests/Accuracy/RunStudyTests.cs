using PulseStream.Accuracy;
using PulseStream.Accuracy.Runs;
using PulseStream.Accuracy.Statistics;
using Xunit;

namespace PulseStream.Tests.Accuracy;

/// <summary>Runs whose lag and bias are known, one by one and as studies of several groups.</summary>
public sealed class RunStudyTests
{
    private const int Studies = 60;

    private static readonly PlateauRule Rule = PlateauRule.Usual(Quantity.Saturation);

    [Theory]
    [InlineData(0)]
    [InlineData(60)]
    [InlineData(-60)]
    [InlineData(33.5)]
    [InlineData(-12.3)]
    public void ALagOfUpToAMinuteIsFoundInBothDirections(double lag) =>
        IsFound(new() { LagSeconds = lag, Bias = 1.2, Seed = 1 }, 0.5);

    [Theory]
    [InlineData(2, 1)]
    [InlineData(1, 5)]
    [InlineData(4, 2)]
    [InlineData(0.5, 10)]
    [InlineData(8, 1)]
    public void SampleIntervalsMayDiffer(double device, double reference) =>
        IsFound(new() { LagSeconds = 21, Bias = -1.5, DeviceInterval = device, ReferenceInterval = reference, Seed = 2 }, 1);

    [Theory]
    [InlineData(8, false)]
    [InlineData(16, false)]
    [InlineData(12, true)]
    public void AnAveragingDeviceComesHalfItsAverageLaterAndItsBiasStays(double averaging, bool isWhole) =>
        IsFound(new() { LagSeconds = 9, Bias = 0.8, AveragingSeconds = averaging, IsDeviceWhole = isWhole, Seed = 3 }, 1.5);

    [Theory]
    [InlineData(60)]
    [InlineData(-60)]
    public void WhereBothBeginAndEndTogetherTheRestIsEnough(double lag) =>
        IsFound(new() { LagSeconds = lag, Bias = 1, HasShortEnds = true, Seed = 4 }, 0.5);

    [Theory]
    [InlineData(40)]
    [InlineData(-40)]
    public void AShortRunIsNotAlignedWhereItsFlatEndsMeet(double lag) =>
        IsFound(new() { LagSeconds = lag, Levels = [97, 85], HasShortEnds = true, DeviceNoise = 1, Seed = 5 }, 1);

    [Fact]
    public void TheStatementHoldsTheBiasOfEachGroupAndTheirDifference()
    {
        var (light, dark, difference, all) = (0, 0, 0, 0);
        for (var study = 0; study < Studies; study++)
        {
            var statement = AccuracyStatement.Of(Study(study), Quantity.Saturation, []);
            light += statement.Groups[1].BiasInterval!.Value.Contains(0.4) ? 1 : 0;
            dark += statement.Groups[0].BiasInterval!.Value.Contains(2.0) ? 1 : 0;
            difference += statement.LargestDifference is { Higher: "dark" } largest && largest.Interval!.Value.Contains(1.6) ? 1 : 0;
            all += statement.BiasInterval!.Value.Contains((0.4 + 2.0) / 2) ? 1 : 0;
        }

        // 60 studies tell a share of 0.95 to 0.028; the groups are fixed, so that the interval of all is wider than it need be.
        Assert.InRange(light, 0.88 * Studies, Studies);
        Assert.InRange(dark, 0.88 * Studies, Studies);
        Assert.InRange(difference, 0.88 * Studies, Studies);
        Assert.InRange(all, 0.88 * Studies, Studies);
    }

    private static void IsFound(InventedRun invented, double within)
    {
        var run = AlignedRun.Of("hut-01", invented.Device(), invented.Reference(), Rule);

        Assert.True(run.Lag.IsKnown);
        Assert.Equal(invented.AlignedLagSeconds, run.Lag.Seconds, within);
        Assert.InRange(run.Pairs.Count, invented.Levels.Length - 1, 3 * invented.Levels.Length);
        Assert.Equal(invented.Bias, Measures.Of(run.Pairs).Bias!.Value, 0.2);
        Assert.All(run.Pairs, pair => Assert.InRange(pair.Error, invented.Bias - 1.2, invented.Bias + 1.2));
    }

    private static PairedReading[] Study(int seed)
    {
        var chance = new Random(seed);
        return
        [
            .. Enumerable.Range(0, 10).SelectMany(subject =>
            {
                var isDark = subject % 2 == 0;
                var invented = new InventedRun
                {
                    LagSeconds = (120 * chance.NextDouble()) - 60,
                    Bias = (isDark ? 2.0 : 0.4) + (0.7 * SimulatedStudies.Normal(chance)),
                    DeviceNoise = 0.6,
                    AveragingSeconds = 6 * chance.Next(3),
                    DeviceInterval = 1 + chance.Next(3),
                    Levels = [95, 90, 86, 82, 78, 74, 94],
                    Seed = (1000 * seed) + subject,
                };
                return AlignedRun.Of($"s{subject}", invented.Device(), invented.Reference(), Rule).Pairs
                    .Select(pair => pair with { SkinTone = isDark ? "dark" : "light" });
            }),
        ];
    }
}
