using PulseStream.Signal;
using Xunit;

namespace PulseStream.Tests.Signal;

/// <summary>The beat of a pair that is due before the second ends, where it does not show yet.</summary>
public sealed class BeatTrainTests
{
    private const double BinRateHz = 50;
    private const double End = 400;

    [Theory]
    [InlineData(35)]
    [InlineData(85)]
    public void TheOtherBeatOfAPairCountsWhenItIsDue(double firstInterval)
    {
        var train = Train(firstInterval, 120 - firstInterval, out var due);
        Assert.True(train.Expect(due - 3, due + 3));
        Assert.Equal(due, train.Rises[^1]);
    }

    [Fact]
    public void ABeatThatWouldHaveShownIsNotDue()
    {
        var train = Train(35, 85, out var due);
        Assert.False(train.Expect(due + 1, due + 9));
        Assert.False(train.Expect(due - 9, due - 1));
    }

    [Theory]
    [InlineData(60, 60)]
    [InlineData(35, 60)]
    public void OnlyPairsHaveOne(double firstInterval, double secondInterval)
    {
        var train = Train(firstInterval, secondInterval, out _, isBroken: firstInterval != secondInterval);
        Assert.False(train.Expect(0, End));
    }

    private static BeatTrain Train(double first, double second, out double due, bool isBroken = false)
    {
        List<double> rises = [20];
        for (var k = 0; k < 6; k++)
        {
            rises.Add(rises[^1] + (k % 2 == 0 ? first : second) + (isBroken && k == 4 ? 30 : 0));
        }

        due = rises[^1] + first;
        var train = new BeatTrain(BinRateHz);
        train.Take([.. rises], 0, End, true, true, false);
        return train;
    }
}
