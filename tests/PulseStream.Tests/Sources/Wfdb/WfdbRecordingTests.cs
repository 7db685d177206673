using PulseStream.Samples;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Sources.Wfdb;

public sealed class WfdbRecordingTests
{
    // First bytes and first values of each format: signal(5) of the WFDB Applications Guide; see tests/vectors/wfdb.
    [Theory]
    [InlineData(8, "007F7F", -2047, new[] { -2047, -1920, -1793 })]
    [InlineData(16, "02800E821A84", 0, new[] { -32766, -32242, -31718 })]
    [InlineData(61, "8003820F", 0, new[] { -32765, -32241 })]
    [InlineData(80, "041220", 0, new[] { -124, -110, -96 })]
    [InlineData(160, "05001102", 0, new[] { -32763, -32239 })]
    [InlineData(212, "0698223EBA5A", 0, new[] { -2042, -1758, -1474, -1190 })]
    [InlineData(212, "06982206F0", 0, new[] { -2042, -1758, 6 })]
    [InlineData(310, "0EECC42E", 0, new[] { -505, -158, 189 })]
    [InlineData(311, "088EED0B", 0, new[] { -504, -157, 190 })]
    [InlineData(24, "090080150181", 0, new[] { -8388599, -8322795 })]
    [InlineData(32, "0A000080", 0, new[] { -2147483638 })]
    public void BytesOfEachFormatAreTheValuesOfTheStandard(int format, string hex, int initial, int[] values)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["r.dat"], Convert.FromHexString(hex));
        var header = folder.Write("r.hea", $"r 1 125 {values.Length}\nr.dat {format} 1(0)/NU 12 0 {initial} {values.Sum(v => (long)v)} 0 PLETH\n");

        var (_, samples, said) = FileReading.Of(header);

        Assert.Equal(values.Select(v => (double)v), samples.Select(s => s.Sample.Pleth));
        Assert.Empty(said);
    }

    [Fact]
    public void GainAndBaselineMakePhysicalValuesAndInvalidSamplesAreMissing()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["r.dat"], Bytes16(110, 210, short.MinValue, 220, 130, 230));
        var header = folder.Write("r.hea", "r 2 100 3\nr.dat 16 10(10)/count 16 0 0 0 0 PPG red 660 nm\nr.dat 16 10(10)/count 16 0 0 0 0 PPG IR\n");

        var (recording, samples, _) = FileReading.Of(header);

        Assert.Equal(SampleColumns.Red | SampleColumns.Infrared, recording.Header.Columns);
        Assert.Equal([(0, 10.0, 20.0), (2, 12.0, 22.0)], samples.Select(s => (s.Index, s.Sample.Red, s.Sample.Infrared)));
        Assert.Equal((2, 1), (recording.Tally.Samples, recording.Tally.Missing));
    }

    [Fact]
    public void SegmentsFollowEachOtherAndGapsAreGaps()
    {
        using var folder = new TemporaryFolder();
        folder.Write("r_layout.hea", "r_layout 1 50 0\n~ 0 1(0)/NU 0 0 0 0 0 PLETH\n");
        folder.Write("r_1.hea", "r_1 1 50 2\nr_1.dat 16 1(0)/NU 16 0 1 3 0 PLETH\n");
        folder.Write("r_2.hea", "r_2 2 50 2\nr_2.dat 16 1(0)/mV 16 0 9 18 0 II\nr_2.dat 16 1(0)/NU 16 0 3 7 0 PLETH\n");
        File.WriteAllBytes(folder["r_1.dat"], Bytes16(1, 2));
        File.WriteAllBytes(folder["r_2.dat"], Bytes16(9, 3, 9, 4));
        var header = folder.Write("r.hea", "r/4 1 50 9\nr_layout 0\nr_1 2\n~ 3\nr_2 2\n");

        var (recording, samples, said) = FileReading.Of(header);

        Assert.Equal([(0, 1.0), (1, 2.0), (5, 3.0), (6, 4.0)], samples.Select(s => (s.Index, s.Sample.Pleth)));
        Assert.Equal(3, recording.Tally.Missing);
        Assert.Empty(said);
    }

    [Fact]
    public void SeveralSamplesAFrameAreReadAtTheirRate()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["r.dat"], Bytes16(7, 1, 2, 7, 3, 4));
        var header = folder.Write("r.hea", "r 2 50 2\nr.dat 16 200 16 0 7 14 0 II\nr.dat 16x2 1(0)/NU 16 0 1 10 0 PLETH\n");

        var (recording, samples, _) = FileReading.Of(header);

        Assert.Equal(100, recording.Header.Rate.Hz);
        Assert.Equal([1.0, 2, 3, 4], samples.Select(s => s.Sample.Pleth));
    }

    [Fact]
    public void AChangedByteIsSaid()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["r.dat"], Bytes16(1, 2));

        var (_, _, said) = FileReading.Of(folder.Write("r.hea", "r 1 50 2\nr.dat 16 1(0)/NU 16 0 1 4 0 PLETH\n"));

        Assert.Contains("PLETH", Assert.Single(said), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("r 1 50 2\n", "end of the header")]
    [InlineData("no header\n", "record line")]
    [InlineData("r 1 50 2\nr.dat\n", "signal line")]
    [InlineData("r 1 50 2\nr.dat 16 200 16 0 0 0 0 II\n", "--map")]
    [InlineData("r 1 50 2\nr.dat 516 1/NU 16 0 0 0 0 PLETH\n", "format 516")]
    [InlineData("r 1 0.0167 2\nr.dat 16 1/NU 16 0 0 0 0 PLETH\n", "25 to 1000")]
    [InlineData("r 1 50 2\nnone.dat 16 1/NU 16 0 0 0 0 PLETH\n", "no such file")]
    public void WhatCannotBeReadIsOneSentence(string header, string says)
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["r.dat"], Bytes16(1, 2));

        var run = ProgramRun.Of("replay", folder.Write("r.hea", header));

        run.IsRefused();
        Assert.Contains(says, run.Error, StringComparison.Ordinal);
    }

    [Fact]
    public void AMapNamesTheSignals()
    {
        using var folder = new TemporaryFolder();
        File.WriteAllBytes(folder["r.dat"], Bytes16(1, 2, 3, 4));
        var header = folder.Write("r.hea", "r 2 50 2\nr.dat 16 1(0)/NU 16 0 1 4 0 LED1\nr.dat 16 1(0)/NU 16 0 2 6 0 LED2\n");

        var (_, samples, _) = FileReading.Of(header, "red=LED2,infrared=LED1");

        Assert.Equal([(2.0, 1.0), (4.0, 3.0)], samples.Select(s => (s.Sample.Red, s.Sample.Infrared)));
    }

    private static byte[] Bytes16(params int[] values) => [.. values.SelectMany(value => BitConverter.GetBytes((short)value))];
}
