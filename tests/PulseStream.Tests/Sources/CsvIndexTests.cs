using System.Globalization;
using CsCheck;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class CsvIndexTests
{
    [Fact]
    public void ACounterThatStartsAnywhereStartsAtIndexZero()
    {
        var reading = CsvReading.Of(CsvReading.Counted([5000, 5001, 5004]), 100);
        Assert.Equal([0, 1, 4], reading.Indices);
        Assert.Equal((3, 2, 0, 0), Counts(reading));
    }

    [Fact]
    public void EachGapStartsABlock()
    {
        var reading = CsvReading.Of(CsvReading.Counted([0, 1, 2, 7, 8]), 100);
        Assert.Equal([(0, 3), (7, 2)], reading.Blocks.Select(block => (block.FirstIndex, block.Samples.Length)));
    }

    [Fact]
    public void ARepeatIsDroppedAndNoFault()
    {
        var reading = CsvReading.Of(CsvReading.Counted([0, 0, 1, 1, 2]), 100);
        Assert.Equal([0, 1, 2], reading.Indices);
        Assert.Equal((3, 0, 0, 2), Counts(reading));
        Assert.Empty(reading.Said);
    }

    [Fact]
    public void AStepBackIsRefusedCountedAndMissing()
    {
        var reading = CsvReading.Of(CsvReading.Counted([.. CsvReading.Run(500, 100), 520, .. CsvReading.Run(600, 10)]), 100);
        Assert.Equal(CsvReading.Run(0, 110), reading.Indices);
        Assert.Equal((110, 1, 1, 0), Counts(reading));
        Assert.Contains("line 102", reading.Said[0], StringComparison.Ordinal);
    }

    [Fact]
    public void ABadRowThatTheCounterJumpsOverIsMissingOnce()
    {
        var text = CsvReading.Counted(CsvReading.Run(0, 50)) + "50,x,200\n" + string.Concat(CsvReading.Run(51, 10).Select(at => $"{at},1,2\n"));
        Assert.Equal((60, 1, 1, 0), Counts(CsvReading.Of(text, 100)));
    }

    [Fact]
    public void ABadFirstRowWithAGoodCounterStillIsTheStart()
    {
        var text = "sample,infrared\n70,oops\n" + string.Concat(CsvReading.Run(72, 40).Select(at => $"{at},1\n"));
        var reading = CsvReading.Of(text, 100);
        Assert.Equal(2, reading.Indices[0]);
        Assert.Equal((40, 2, 1, 0), Counts(reading));
    }

    [Fact]
    public void BadRowsAtTheEndAreMissing()
    {
        var reading = CsvReading.Of(CsvReading.Counted(CsvReading.Run(0, 100)) + "x\ny\n", 100);
        Assert.Equal((100, 2, 2, 0), Counts(reading));
    }

    [Fact]
    public void AHugeJumpThatTheNextRowConfirmsIsAGap()
    {
        var reading = CsvReading.Of(CsvReading.Counted([0, 1, 1_000_000_000_000, 1_000_000_000_001]), 100);
        Assert.Equal([0, 1, 1_000_000_000_000, 1_000_000_000_001], reading.Indices);
        Assert.Equal((4, 999_999_999_998, 0, 0), Counts(reading));
    }

    [Theory]
    [InlineData(0)]
    [InlineData(40)]
    [InlineData(59)]
    public void OneStrayCounterCostsOneRow(int at)
    {
        var counters = CsvReading.Run(300, 60).ToArray();
        counters[at] = 9_000_000_000;
        var reading = CsvReading.Of(CsvReading.Counted(counters), 100);
        Assert.Null(reading.Failure);
        Assert.Equal((59, 1, 1, 0), Counts(reading));
    }

    [Fact]
    public void WithoutCounterAndTimeRowsFollowEachOtherAndBadOnesTakeTheirPlace()
    {
        var rows = string.Concat(Enumerable.Repeat("5\n", 30));
        var reading = CsvReading.Of($"pleth\n{rows}?\n{rows}", 100);
        Assert.Equal([.. CsvReading.Run(0, 30), .. CsvReading.Run(31, 30)], reading.Indices);
        Assert.Equal((60, 1, 1, 0), Counts(reading));
    }

    [Fact]
    public void ACounterWrapsInAFileAtEachWidth() =>
        Gen.Select(Gen.Int[8, 32], Gen.Long[1, 60], Gen.Long[2, 60]).Sample((bits, below, above) =>
        {
            long[] counters = [.. CsvReading.Run((1L << bits) - below, below), .. CsvReading.Run(0, above)];
            return CsvReading.Of(CsvReading.Counted(counters), 100).Indices.SequenceEqual(CsvReading.Run(0, below + above));
        });

    // A rate that is off by 0.1 %, as a quartz and a resistor-timed converter differ: common practice.
    [Theory]
    [InlineData(100, 0.001, 6)]
    [InlineData(128, 0, 3)]
    [InlineData(800, 0, 3)]
    [InlineData(512, 0.0005, 3)]
    [InlineData(128, 0, 2)]
    public void TimesThatDriftOrAreCoarseMakeNoGaps(double hz, double drift, int decimals)
    {
        // The drift sets in after the ten seconds from which the rate is taken.
        var seconds = 0.0;
        var times = Enumerable.Range(0, 100_000).Select(at => seconds += (at > 12 * hz ? 1 + drift : 1) / hz);
        var reading = CsvReading.Of(Timed(times, decimals));
        Assert.Equal(hz, reading.Header!.Rate.Hz);
        Assert.Equal((100_000, 0, 0, 0), Counts(reading));
    }

    [Theory]
    [InlineData(128, 3)]
    [InlineData(100, 2)]
    [InlineData(1000, 3)]
    [InlineData(50, 2)]
    public void AStepOfTimeIsAGap(double hz, int decimals)
    {
        var times = Enumerable.Range(0, 3000).Where(at => at is not (>= 1000 and < 1007) and not 2000).Select(at => at / hz);
        var reading = CsvReading.Of(Timed(times, decimals));
        Assert.Equal(2999, reading.Indices[^1]);
        Assert.Equal((2992, 8, 0, 0), Counts(reading));
    }

    [Theory]
    [InlineData(1e7, 399, 1, 1, 0)]
    [InlineData(1e300, 399, 1, 1, 0)]
    [InlineData(0.5, 399, 1, 1, 0)]
    [InlineData(1.99, 399, 1, 0, 1)]
    public void AStrayTimeCostsItsRow(double stray, long samples, long missing, long refused, long repeats)
    {
        var times = Enumerable.Range(0, 400).Select(at => at == 200 ? stray : at / 100.0);
        var reading = CsvReading.Of("time_s,infrared\n" + string.Concat(times.Select(time => $"{time:R},7\n")));
        Assert.Equal((samples, missing, refused, repeats), Counts(reading));
    }

    internal static string Timed(IEnumerable<double> times, int decimals) =>
        "time_s,infrared\n" + string.Concat(times.Select(time => $"{Math.Round(time, decimals).ToString($"F{decimals}", CultureInfo.InvariantCulture)},7\n"));

    private static (long Samples, long Missing, long Refused, long Repeats) Counts(CsvReading reading) =>
        (reading.Tally.Samples, reading.Tally.Missing, reading.Tally.RefusedRows, reading.Tally.Repeats);
}
