using CsCheck;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class CsvRateTests
{
    [Theory]
    [InlineData(128, 3)]
    [InlineData(62.5, 3)]
    [InlineData(100.0 / 3, 4)]
    [InlineData(25, 2)]
    [InlineData(1000, 3)]
    [InlineData(31.25, 8)]
    [InlineData(24.5, 6)]
    [InlineData(24, 3)]
    [InlineData(1040, 5)]
    public void TheRateIsFoundFromRoundedTimes(double hz, int decimals) =>
        Assert.Equal(hz, CsvReading.Of(CsvIndexTests.Timed(Enumerable.Range(0, 15_000).Select(at => at / hz), decimals)).Header!.Rate.Hz);

    [Fact]
    public void AnyWholeRateIsFoundThroughGapsAndBadRows() =>
        Gen.Select(Gen.Int[25, 1000], Gen.Int[100, 400], Gen.Int[1, 5000]).Sample((hz, at, gap) =>
        {
            var times = Enumerable.Range(0, 6000).Select(row => (double)(row < at ? row : row + gap) / hz);
            var lines = CsvIndexTests.Timed(times, 4).Split('\n');
            lines[50] = "nonsense";
            return CsvReading.Of(string.Join('\n', lines)).Header!.Rate.Hz == hz;
        });

    [Fact]
    public void WithACounterTheTimesGiveTheRateAcrossGaps()
    {
        var rows = Enumerable.Range(0, 2000).Where(at => at % 3 == 0).Select(at => $"{at + 9000},{at / 250.0:F3},5\n");
        Assert.Equal(250, CsvReading.Of("sample,time_s,infrared\n" + string.Concat(rows)).Header!.Rate.Hz);
    }

    [Fact]
    public void TheFileTellsTheRateBeforeTheOption()
    {
        var reading = CsvReading.Of(CsvIndexTests.Timed(Enumerable.Range(0, 500).Select(at => at / 100.0), 2), rateHz: 50);
        Assert.Equal(100, reading.Header!.Rate.Hz);
        Assert.Contains("--rate 50 is not used", Assert.Single(reading.Said), StringComparison.Ordinal);
    }

    [Fact]
    public void OneRowWithTimesTakesTheRateOfTheOption()
    {
        var reading = CsvReading.Of("time_s,infrared\n0,5\n", rateHz: 50);
        Assert.Equal(50, reading.Header!.Rate.Hz);
        Assert.Equal(1, reading.Tally.Samples);
    }

    [Theory]
    [InlineData("time_s,infrared\n0,1\n1,1\n2,1\n", null, "'time_s' tells 1 samples a second")]
    [InlineData("time_s,infrared\n0,1\n0.05,1\n0.1,1\n", null, "'time_s' tells 20 samples a second, expected 25 to 1000 Hz, give or take 4 %")]
    [InlineData("time_s,infrared\n0,1\n", null, "the sample rate is not known")]
    [InlineData("infrared\n1\n", null, "the sample rate is not known")]
    [InlineData("infrared\n1\n", 24.0, "--rate: expected 25 to 1000 Hz, found 24")]
    [InlineData("infrared\n1\n", 1001.0, "--rate: expected 25 to 1000 Hz, found 1001")]
    [InlineData("infrared\n1\n", double.NaN, "--rate: expected 25 to 1000 Hz")]
    public void AMissingOrImpossibleRateIsOneSentence(string text, double? rateHz, string words) =>
        Assert.Contains(words, CsvReading.Of(text, rateHz).Sentence, StringComparison.Ordinal);

    [Fact]
    public void OptionsReachTheHeader()
    {
        var start = new DateTimeOffset(2031, 2, 3, 4, 5, 6, TimeSpan.FromHours(1));
        using var recording = CsvRecording.Open(
            new MemoryStream("INFRARED,Red\n1,2\n"u8.ToArray()), "hut.csv", new CsvOptions(100, 262143, start), TestContext.Current.CancellationToken);
        Assert.Equal(
            new RecordingHeader("hut.csv", new SampleRate(100), SampleColumns.Red | SampleColumns.Infrared, 262143, start),
            recording.Header);
    }
}
