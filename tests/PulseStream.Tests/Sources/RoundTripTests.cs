using CsCheck;
using PulseStream.Samples;
using PulseStream.Sources;
using PulseStream.Sources.Edf;
using PulseStream.Sources.Wfdb;
using PulseStream.Tests.Cli;
using Xunit;

namespace PulseStream.Tests.Sources;

/// <summary>Whole counts, whatever their width and wherever samples are missing, come back equal.</summary>
public sealed class RoundTripTests
{
    private const int Cases = 60;

    private static readonly double[] Rates = [24.5, 25, 62.5, 100, 128, 999];

    // Width of the counts: 12 to 24 bits fit WFDB; EDF holds what lies within 65,534 of each other.
    private static readonly Gen<(double Hz, SampleBlock[] Blocks)> Recordings =
        from hz in Gen.Int[0, Rates.Length - 1].Select(i => Rates[i])
        from offset in Gen.Int[0, 8_000_000]
        from span in Gen.Int[1, 65_534]
        from pieces in Gen.Select(Gen.Int[0, 700], Gen.Select(Gen.Int[0, span], Gen.Int[0, span]).Array[1, 300]).Array[1, 4]
        select (hz, BlocksOf(offset, pieces));

    [Fact]
    public void WfdbGivesBackWhatWasWritten() => Recordings.Sample(recording => IsGivenBack(recording.Hz, recording.Blocks, "r.hea", (path, header, scan) =>
    {
        using var writer = new WfdbRecordingWriter(path, header, scan);
        Array.ForEach(recording.Blocks, writer.Write);
        writer.Finish();
        return writer.IsExact;
    }), iter: Cases);

    [Fact]
    public void EdfGivesBackWhatWasWritten() => Recordings.Sample(recording => IsGivenBack(recording.Hz, recording.Blocks, "r.edf", (path, header, scan) =>
    {
        using var writer = new EdfRecordingWriter(path, header, scan, []);
        Array.ForEach(recording.Blocks, writer.Write);
        writer.Finish();
        return writer.CoarsestStep is null;
    }), iter: Cases);

    [Fact]
    public void RangesTooWideForEdfAreRoundedAndSaid()
    {
        using var folder = new TemporaryFolder();
        SampleBlock[] blocks = [new SampleBlock(0, Enumerable.Range(0, 500).Select(i => Sample.OfLight(i * 1000, 1e6 + (i * 7.25))).ToArray())];
        var scan = Scan(blocks);
        using (var writer = new EdfRecordingWriter(folder["r.edf"], HeaderOf(100), scan, []))
        {
            Array.ForEach(blocks, writer.Write);
            writer.Finish();
            Assert.InRange(writer.CoarsestStep!.Value, 7.5, 8);
        }

        var (_, samples, _) = FileReading.Of(folder["r.edf"]);

        Assert.All(samples, s => Assert.InRange(s.Sample.Red - (s.Index * 1000), -4, 4));
    }

    private static bool IsGivenBack(double hz, SampleBlock[] blocks, string name, Func<string, RecordingHeader, RecordingScan, bool> write)
    {
        using var folder = new TemporaryFolder();
        var isExact = write(folder[name], HeaderOf(hz), Scan(blocks));
        var (recording, samples, said) = FileReading.Of(folder[name]);
        return isExact && said.Count == 0 && recording.Header.Rate.Hz == hz && samples.SequenceEqual(blocks.SelectMany(Archive.Sessions.Indexed));
    }

    private static RecordingHeader HeaderOf(double hz) => new("r", new SampleRate(hz), SampleColumns.Red | SampleColumns.Infrared);

    private static RecordingScan Scan(SampleBlock[] blocks)
    {
        var scan = new RecordingScan(SampleColumns.Red | SampleColumns.Infrared);
        Array.ForEach(blocks, scan.Add);
        return scan;
    }

    private static SampleBlock[] BlocksOf(int offset, (int Gap, (int, int)[] Values)[] pieces)
    {
        var (blocks, next) = (new List<SampleBlock>(), 0L);
        foreach (var (gap, values) in pieces)
        {
            next += next == 0 ? 0 : gap;
            blocks.Add(new SampleBlock(next, values.Select(v => Sample.OfLight(offset + v.Item1, offset + v.Item2)).ToArray()));
            next += values.Length;
        }

        return [.. blocks];
    }
}
