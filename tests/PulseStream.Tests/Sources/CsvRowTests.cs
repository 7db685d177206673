using System.Globalization;
using CsCheck;
using PulseStream.Samples;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class CsvRowTests
{
    [Theory]
    [InlineData("Sample,RED,InfraRed\n0,1,2\n1,3,4.5\n")]
    [InlineData("\uFEFFred,note,infrared,sample\r\n1,x,2,0\r\n3,,4.5,1\r\n")]
    [InlineData("infrared, red ,\"sample\"\n 2 ,1,0\n4.5e0,+3,1")]
    [InlineData("sample,red,infrared\n0,1,2\n1,3,4.5\n\n\r\n\n")]
    public void TheSameRecordingInAnyDress(string text)
    {
        var reading = CsvReading.Of(text, 100);
        Assert.Null(reading.Failure);
        Assert.Equal([(0, Sample.OfLight(1, 2)), (1, Sample.OfLight(3, 4.5))], reading.Samples);
        Assert.Equal(0, reading.Tally.RefusedRows);
    }

    [Fact]
    public void EveryColumnArrivesInItsPlaceAndSomeMayBeNegative()
    {
        var reading = CsvReading.Of("accel_z,accel_y,accel_x,pleth,ambient,infrared,red\n-9.81,-2,-1,-4,5,6,7\n", 100);
        Assert.Equal(new Sample(7, 6, 5, -4, -1, -2, -9.81), Assert.Single(reading.Samples).Sample);
        Assert.Equal(
            SampleColumns.Red | SampleColumns.Infrared | SampleColumns.Ambient | SampleColumns.Pleth | SampleColumns.Acceleration,
            reading.Header!.Columns);
    }

    [Fact]
    public void UnknownColumnsAreSaidOnceAndLoneAxesAreIgnored()
    {
        var reading = CsvReading.Of("nurse,infrared,room,accel_x\nx,1,y,z\nx,1,y,z\n", 100);
        Assert.Equal(["night.csv: columns ignored: 'nurse', 'room', 'accel_x' (not all three axes are there)."], reading.Said);
        Assert.Equal(SampleColumns.Infrared, reading.Header!.Columns);
    }

    [Theory]
    [InlineData("7", "wrong number of fields")]
    [InlineData("7,1,2,3", "wrong number of fields")]
    [InlineData("", "wrong number of fields")]
    [InlineData("7,abc,2", "not a number")]
    [InlineData("7,,2", "not a number")]
    [InlineData("7,1\0,2", "not a number")]
    [InlineData("7,1 2,2", "not a number")]
    [InlineData("7,.,2", "not a number")]
    [InlineData("7,NaN,2", "not finite")]
    [InlineData("7,1,-Infinity", "not finite")]
    [InlineData("7,1,1e999", "not finite")]
    [InlineData("7,-1,2", "negative counts")]
    [InlineData("7,1,-0.5", "negative counts")]
    [InlineData("-7,1,2", "sample counter")]
    [InlineData("7.5,1,2", "sample counter")]
    public void EachCauseIsNamedWithItsFirstLineAndCountedAtTheEnd(string row, string words)
    {
        var counters = CsvReading.Run(0, 40);
        var good = CsvReading.Counted(counters);
        var reading = CsvReading.Of($"{good}{row}\n40,1,2\n{row}\n" + string.Concat(CsvReading.Run(41, 40).Select(at => $"{at},1,2\n")), 100);
        Assert.Null(reading.Failure);
        Assert.Equal((81, 2, 2), (reading.Tally.Samples, reading.Tally.Missing, reading.Tally.RefusedRows));
        Assert.Equal(2, reading.Said.Count);
        Assert.StartsWith($"night.csv, line 42: row refused, {words}", reading.Said[0], StringComparison.Ordinal);
        Assert.StartsWith("night.csv: bad rows refused: 2 (2 ", reading.Said[1], StringComparison.Ordinal);
    }

    [Fact]
    public void FiveInAHundredBadRowsAreBorneAndOneMoreIsNot()
    {
        var nineteen = string.Concat(Enumerable.Repeat("1\n", 19));
        Assert.Null(CsvReading.Of("infrared\nx\n" + nineteen, 100).Failure);
        var refused = CsvReading.Of("infrared\nx\nx\n" + nineteen + nineteen[2..], 100);
        Assert.Contains("2 of 39 rows are bad", refused.Sentence, StringComparison.Ordinal);
        Assert.Equal(37, refused.Samples.Count());
    }

    [Fact]
    public void NumbersReadAsTheRuntimeReadsThem() =>
        Gen.OneOf(
            Gen.Double[0, 1e6].Select(value => value.ToString("R", CultureInfo.InvariantCulture)),
            Gen.Select(Gen.Long[0, long.MaxValue], Gen.Int[0, 20], (digits, point) =>
                digits.ToString(CultureInfo.InvariantCulture) is var text && point < text.Length ? text.Insert(point, ".") : text),
            Gen.Double[0, double.MaxValue].Select(value => value.ToString("E16", CultureInfo.InvariantCulture)))
        .Sample(text => CsvReading.Of($"infrared\n{text}\n", 100).Samples.Single().Sample.Infrared
            == double.Parse(text, CultureInfo.InvariantCulture));
}
