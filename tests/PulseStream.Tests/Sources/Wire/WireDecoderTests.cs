using System.Text;
using PulseStream.Sources.Wire;
using PulseStream.Sources.Wire.Layout;
using Xunit;

namespace PulseStream.Tests.Sources.Wire;

public sealed class WireDecoderTests
{
    [Fact]
    public void FieldsAreReadAsTheLayoutSays()
    {
        var layout = Instruments.Binary(
            """
            "framing": "sync", "sync": "AA", "length": 8, "checksum": { "kind": "sum8", "byte": 7, "from": 0, "to": 7 },
            "fields": [ { "name": "red", "byte": 1, "bytes": 2, "byteOrder": "big", "mask": "0FF0", "scale": 2, "add": 10 },
                        { "name": "infrared", "byte": 3, "bytes": 2, "byteOrder": "little" },
                        { "name": "pleth", "byte": 5, "bytes": 2, "byteOrder": "big", "mask": "0FFF", "signed": true } ]
            """);

        var sample = Assert.Single(Decoding.Of(layout, [0xAA, 0xF1, 0x2F, 0x34, 0x12, 0xFF, 0xFE, 0x0D]).Samples).Sample;

        Assert.Equal((0x12 * 2) + 10, sample.Red);
        Assert.Equal(0x1234, sample.Infrared);
        Assert.Equal(-2, sample.Pleth);
    }

    [Theory]
    [InlineData("7,100,200\r\n")]
    [InlineData("7,100,200\n")]
    public void ALineWithItsOpeningCountedOrNotIsTheSame(string rest)
    {
        var counted = Instruments.Parse(""" "text": { "separator": ",", "startsWith": "$HUT", "fields": ["-", "sample", "red", "infrared"] } """);
        var uncounted = Instruments.Parse(""" "text": { "separator": ",", "startsWith": "$HUT,", "fields": ["sample", "red", "infrared"] } """);
        var line = Encoding.ASCII.GetBytes($"$HUT,{rest}");

        Assert.Equal(200, Assert.Single(Decoding.Of(counted, line).Samples).Sample.Infrared);
        Assert.Equal(200, Assert.Single(Decoding.Of(uncounted, line).Samples).Sample.Infrared);
    }

    [Theory]
    [InlineData(25, 1)]
    [InlineData(60, 2)]
    [InlineData(100, 4)]
    [InlineData(1000, 40)]
    public void ABurstIsHandedOnInBlocksOfFortyMilliseconds(int hz, int longest)
    {
        var decoder = new WireDecoder(WireLayoutFile.Parse(
            Encoding.UTF8.GetBytes($$"""{ "name": "burst", "sampleRateHz": {{hz}}, "line": { "baud": 115200 }, "text": { "separator": ",", "fields": ["red", "infrared"] } }"""), "hut.json"));
        decoder.Read(Encoding.ASCII.GetBytes(string.Concat(Enumerable.Range(0, hz).Select(i => $"{i},{2 * i}\n"))), 1);

        var next = 0L;
        while (decoder.TakeBlock() is { } block)
        {
            Assert.Equal(next, block.FirstIndex);
            Assert.InRange(block.Samples.Length, 1, longest);
            next += block.Samples.Length;
        }

        Assert.Equal(hz, next);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void ALineWhoseEndWasLostDoesNotCostTheLineBehindIt(bool hasChecksum)
    {
        var layout = hasChecksum ? Instruments.Text : Instruments.Parse(""" "text": { "separator": ",", "startsWith": "$HUT", "fields": ["-", "red", "infrared"] } """);
        var said = Instruments.Frames(layout, 0, 10);
        said[3] = said[3][..8];

        var read = Decoding.Of(layout, [.. said.SelectMany(b => b)]);

        Assert.Equal([0, 1, 2, 4, 5, 6, 7, 8, 9], read.Samples.Select(sample => (int)sample.Sample.Red - 1000));
        Assert.Equal([0, 1, 2, 4, 5, 6, 7, 8, 9], read.Samples.Select(sample => (int)sample.Index));
        Assert.Equal(1, read.Tally.RefusedRows);
    }

    [Fact]
    public void AFlippedBitOfAnUnprovenCounterShiftsNothing()
    {
        var said = Instruments.Frames(Instruments.PlainText, 0, 60);
        said[20] = Encoding.ASCII.GetBytes("36 1020 5\n");

        var read = Decoding.Of(Instruments.PlainText, [.. said.SelectMany(b => b)]);

        Assert.Equal((59L, 1L), (read.Tally.Samples, read.Tally.Missing));
        Assert.All(read.Samples, sample => Assert.Equal(sample.Index, (long)sample.Sample.Red - 1000));
    }

    [Fact]
    public void GarbageBeforeALineDoesNotCostTheLine()
    {
        var said = Instruments.Frames(Instruments.Text, 0, 10);
        said[5] = [0, 0, 0xFF, .. said[5]];

        Assert.Equal(10, Decoding.Of(Instruments.Text, [.. said.SelectMany(b => b)]).Tally.Samples);
    }

    [Fact]
    public void OtherLinesOfAnInstrumentDoNotCount()
    {
        var said = Instruments.Frames(Instruments.Text, 0, 4);
        var bytes = said.Take(2).Append("$BAT,88*00\r\n"u8.ToArray()).Concat(said.Skip(2)).SelectMany(b => b).ToArray();

        var read = Decoding.Of(Instruments.Text, bytes);

        Assert.Equal((4L, 0L, 0L), (read.Tally.Samples, read.Tally.Missing, read.Tally.RefusedRows));
    }

    [Fact]
    public void FaultsAreCountedByCause()
    {
        var said = Instruments.Frames(Instruments.Text, 0, 6).Select(b => Encoding.ASCII.GetString(b)).ToArray();
        said[1] = said[1].Replace("1001", "1002", StringComparison.Ordinal);
        said[3] = "$HUT,3,x,5*" + $"{Checksum.Xor("HUT,3,x,5"u8):X2}\r\n";

        var read = Decoding.Of(Instruments.Text, Encoding.ASCII.GetBytes(string.Concat(said)));

        Assert.Equal((4L, 2L, 2L), (read.Tally.Samples, read.Tally.Missing, read.Tally.RefusedRows));
        Assert.Equal("1 checksum wrong, 1 not a number", read.Decoder.FaultWords);
        Assert.Equal(1, read.Decoder.FaultsOf(WireFault.Checksum));
    }

    [Fact]
    public void ARepeatedFrameIsDroppedAndIsNoFault()
    {
        var said = Instruments.Frames(Instruments.Cobs, 0, 20);
        said.Insert(4, said[3]);

        var read = Decoding.Of(Instruments.Cobs, [.. said.SelectMany(b => b)]);

        Assert.Equal((20L, 0L, 0L, 2L), (read.Tally.Samples, read.Tally.Missing, read.Tally.RefusedRows, read.Tally.Repeats));
    }

    [Fact]
    public void ARefusedFrameWithoutACounterIsAMissingSample()
    {
        var said = Instruments.Frames(Instruments.Unproven, 0, 10);
        said[4] = said[4][..^1];

        var read = Decoding.Of(Instruments.Unproven, [.. said.SelectMany(b => b)]);

        Assert.Equal((9L, 1L, 1L), (read.Tally.Samples, read.Tally.Missing, read.Tally.RefusedRows));
        Assert.All(read.Samples, sample => Assert.Equal(Instruments.SampleOf(sample.Index), sample.Sample));
    }

    [Fact]
    public void AStrayCounterThatNothingProvesCostsItsLineOnly()
    {
        var said = Instruments.Frames(Instruments.PlainText, 100, 10);
        said[4] = "9104 1104 2000\n"u8.ToArray();

        var read = Decoding.Of(Instruments.PlainText, [.. said.SelectMany(b => b)]);

        Assert.Equal((9L, 1L, 1L), (read.Tally.Samples, read.Tally.Missing, read.Tally.RefusedRows));
    }

    [Fact]
    public void TheRestOfALineAfterAPullMakesNoSample()
    {
        var decoder = new WireDecoder(Instruments.PlainText);
        decoder.Read("100 1100 2000\n101 1101 2000\n10"u8, 0);
        decoder.Break();

        decoder.Read("4 1104 2000\n105 1105 2000\n106 1106 2000\n"u8, 0.1);
        decoder.Finish();

        Assert.Equal([0L, 1L, 5L, 6L], Decoding.Taken(decoder).Select(sample => sample.Index));
    }
}
