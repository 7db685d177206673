using System.Text;
using CsCheck;
using PulseStream.Samples;
using PulseStream.Sources.Csv;
using Xunit;

namespace PulseStream.Tests.Sources;

public sealed class CsvRecordingWriterTests
{
    [Fact]
    public void AGapIsAJumpOfTheCounter()
    {
        using var text = new StringWriter();
        var writer = new CsvRecordingWriter(text, SampleColumns.Red | SampleColumns.Infrared, new SampleRate(128));
        writer.Write(new SampleBlock(0, new[] { Sample.OfLight(140000, 0.1) }));
        writer.Write(new SampleBlock(3, new[] { Sample.OfLight(1, 2) }));
        Assert.Equal("sample,time_s,red,infrared\n0,0,140000,0.1\n3,0.0234375,1,2\n", text.ToString());
    }

    [Fact]
    public void WhatIsWrittenReadsBackEqual() =>
        Gen.Select(Gen.Double[0, double.MaxValue].Array[7], Gen.Int[25, 1000], Gen.Int[2, 200]).Sample((values, hz, count) =>
        {
            var sample = new Sample(values[0], values[1], values[2], -values[3], -values[4], values[5], values[6]);
            var all = SampleColumns.Red | SampleColumns.Infrared | SampleColumns.Ambient | SampleColumns.Pleth | SampleColumns.Acceleration;
            using var text = new StringWriter();
            new CsvRecordingWriter(text, all, new SampleRate(hz)).Write(new SampleBlock(0, Enumerable.Repeat(sample, count).ToArray()));
            var reading = CsvReading.Of(Encoding.UTF8.GetBytes(text.ToString()));
            return reading.Header! is { } header && header.Rate.Hz == hz && header.Columns == all
                && reading.Samples.SequenceEqual(Enumerable.Range(0, count).Select(at => ((long)at, sample)));
        });
}
