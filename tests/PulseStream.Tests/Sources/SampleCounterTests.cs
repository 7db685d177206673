using CsCheck;
using PulseStream.Samples;
using PulseStream.Sources;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class SampleCounterTests
{
    private static readonly SampleRate Rate = new(100);

    [Fact]
    public void TheFirstValueBecomesIndexZero()
    {
        Assert.Equal([(CounterStep.Taken, 0), (CounterStep.Taken, 1), (CounterStep.Taken, 11)], Steps(5000, 5001, 5011));
    }

    [Fact]
    public void ARepeatAndAStepBackChangeNothing() => Assert.Equal(
        [(CounterStep.Taken, 0), (CounterStep.Repeat, 0), (CounterStep.StepBack, 0), (CounterStep.Taken, 1)],
        Steps(5000, 5000, 4990, 5001));

    [Fact]
    public void AWrapAtEachWidthIsUnwrappedWhateverIsMissingAroundIt() =>
        Gen.Select(Gen.Int[8, 32], Gen.Long[1, 100], Gen.Long[0, 100]).Where((bits, below, above) => (1L << bits) - below > above)
            .Sample((bits, below, above) =>
                Steps((1L << bits) - below, above).SequenceEqual([(CounterStep.Taken, 0), (CounterStep.Taken, below + above)]));

    [Theory]
    [InlineData(65536 - 101, 0)]
    [InlineData(65535, 101)]
    [InlineData(60000, 0)]
    [InlineData(127, 0)]
    public void AStepBackMoreThanASecondFromAWrapIsNone(long last, long next) =>
        Assert.Equal([(CounterStep.Taken, 0), (CounterStep.StepBack, 0)], Steps(last, next));

    [Fact]
    public void ACounterOfManyLapsIsUnwrapped()
    {
        var counter = new SampleCounter(Rate);
        Assert.All(CsvReading.Run(0, 5 * 256), at =>
        {
            Assert.Equal(CounterStep.Taken, counter.Step(at % 256, out var index));
            Assert.Equal(at, index);
        });
    }

    private static (CounterStep, long)[] Steps(params long[] values)
    {
        var counter = new SampleCounter(Rate);
        return [.. values.Select(value => (counter.Step(value, out var index), index))];
    }
}
