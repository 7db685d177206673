using System.Text;
using PulseStream.Samples;
using PulseStream.Sources.Wire.Layout;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Sources.Wire;

public sealed class WireLayoutFileTests
{
    private const string Fields = """ "fields": [ { "name": "red", "byte": 2, "bytes": 2, "byteOrder": "big" }, { "name": "infrared", "byte": 4, "bytes": 2, "byteOrder": "big" } ] """;

    [Theory]
    [InlineData("hut-text.json", "Silberjoch text")]
    [InlineData("hut-binary.json", "Silberjoch binary")]
    public void TheShippedLayoutsAreRead(string file, string name)
    {
        var layout = WireLayoutFile.Parse(File.ReadAllBytes(Recordings.PathOf($"instruments/{file}")), file);

        Assert.Equal(name, layout.Name);
        Assert.Equal(50, layout.Rate.Hz);
        Assert.Equal(262143, layout.FullScaleCounts);
        Assert.Equal(SampleColumns.Red | SampleColumns.Infrared, layout.Columns);
    }

    [Fact]
    public void WhatIsNotToldIsUsual()
    {
        var layout = Parse($$""" "binary": { "framing": "sync", "sync": "a5 5a", "length": 6, {{Fields}} } """);

        Assert.Equal(new LineSettings(9600, 8, LineParity.None, 1), layout.Line);
        Assert.Null(layout.FullScaleCounts);
    }

    [Theory]
    [InlineData(""" "text": { "separator": ",", "fields": ["red", "infrared"], "seperator": ";" } """, "text.seperator")]
    [InlineData(""" "text": { "separator": ",", "fields": ["red", "infared"] } """, "text.fields[1]")]
    [InlineData(""" "text": { "separator": ",", "fields": ["red", "sample"] } """, "text.fields")]
    [InlineData(""" "text": { "separator": ",", "fields": ["infrared", "infrared"] } """, "text.fields")]
    [InlineData(""" "text": { "separator": ",", "fields": ["infrared", "accel_x"] } """, "text.fields")]
    [InlineData(""" "text": { "separator": "", "fields": ["infrared"] } """, "text.separator")]
    [InlineData(""" "text": { "separator": ",", "checksum": "crc", "fields": ["infrared"] } """, "text.checksum")]
    [InlineData(""" "text": { "separator": ",", "fields": ["infrared"] }, "binary": {} """, "binary")]
    [InlineData(""" "lines": {} """, "lines")]
    [InlineData(""" "fullScale": 0 """, "fullScale")]
    [InlineData(""" "binary": { "framing": "stuffed", FIELDS } """, "binary.framing")]
    [InlineData(""" "binary": { "framing": "sync", "sync": "A5", FIELDS } """, "binary.length")]
    [InlineData(""" "binary": { "framing": "sync", "sync": "A5", "length": 5, FIELDS } """, "binary.length")]
    [InlineData(""" "binary": { "framing": "sync", "sync": "A", "length": 6, FIELDS } """, "binary.sync")]
    [InlineData(""" "binary": { "framing": "cobs", "sync": "A5", FIELDS } """, "binary.sync")]
    [InlineData(""" "binary": { "framing": "cobs", "checksum": { "kind": "crc16", "byte": 6, "from": 0, "to": 6 }, FIELDS } """, "binary.checksum.kind")]
    [InlineData(""" "binary": { "framing": "cobs", "checksum": { "kind": "crc16-kermit", "byte": 6, "from": 0, "to": 6 }, FIELDS } """, "binary.checksum.byteOrder")]
    [InlineData(""" "binary": { "framing": "cobs", "checksum": { "kind": "xor8", "byte": 3, "from": 0, "to": 6 }, FIELDS } """, "binary.checksum.byte")]
    [InlineData(""" "binary": { "framing": "cobs", "checksum": { "kind": "xor8", "byte": 6, "from": 2, "to": 2 }, FIELDS } """, "binary.checksum.to")]
    [InlineData(""" "binary": { "framing": "cobs", "samples": { "count": 2 }, FIELDS } """, "binary.samples.stride")]
    [InlineData(""" "binary": { "framing": "cobs", "fields": [ { "name": "infrared", "byte": 0, "bytes": 5, "byteOrder": "big" } ] } """, "binary.fields[0].bytes")]
    [InlineData(""" "binary": { "framing": "cobs", "fields": [ { "name": "infrared", "byte": 0, "bytes": 1, "mask": "1FF" } ] } """, "binary.fields[0].mask")]
    [InlineData(""" "binary": { "framing": "cobs", "fields": [ { "name": "infrared", "byte": 0, "bytes": 1, "scale": 0 } ] } """, "binary.fields[0].scale")]
    [InlineData(""" "binary": { "framing": "cobs", "fields": [ { "name": "infrared", "byte": 0, "bytes": 1, "perframe": true } ] } """, "binary.fields[0].perframe")]
    [InlineData(""" "binary": { "framing": "cobs", "fields": [ 7 ] } """, "binary.fields[0]")]
    public void AWrongMemberIsRefusedWithItsPath(string members, string path)
    {
        var problem = Assert.Throws<BadInputException>(() => Parse(members.Replace("FIELDS", Fields, StringComparison.Ordinal)));

        Assert.Equal($"hut.json, {path}", problem.Place);
    }

    [Theory]
    [InlineData(""" "text": { "separator": ",", "fields": ["infrared"], "separator": ";" } """, "text.separator", "stands twice")]
    [InlineData(""" "binary": { "framing": "hdlc", FIELDS } """, "binary.framing", "found 'hdlc'")]
    [InlineData(""" "text": { "separator": ",", "fields": [] } """, "text.fields", "found an empty one")]
    public void WhatStandsThereIsTold(string members, string path, string words)
    {
        var problem = Assert.Throws<BadInputException>(() => Parse(members.Replace("FIELDS", Fields, StringComparison.Ordinal)));

        Assert.Equal($"hut.json, {path}", problem.Place);
        Assert.Contains(words, problem.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void ALineThatCannotBeSetIsRefusedWithItsPath()
    {
        var text = """{ "name": "x", "sampleRateHz": 50, "line": { "baud": 9600, "parity": "mark" }, "text": { "separator": ",", "fields": ["infrared"] } }""";

        Assert.Equal("hut.json, line.parity", Assert.Throws<BadInputException>(() => WireLayoutFile.Parse(Encoding.UTF8.GetBytes(text), "hut.json")).Place);
    }

    private static WireLayout Parse(string members) => WireLayoutFile.Parse(
        Encoding.UTF8.GetBytes($$"""{ "name": "x", "sampleRateHz": 50, "line": { "baud": 9600 }, {{members}}, }"""), "hut.json");
}
