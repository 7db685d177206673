using System.Text;
using BenchmarkDotNet.Attributes;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sources.Csv;

namespace PulseStream.Benchmarks;

/// <summary>
/// Ten minutes of CSV text in memory, read and judged as a replay does, against a loop that splits the lines and averages
/// two columns. One operation is one sample.
/// </summary>
[MemoryDiagnoser]
[OperationsPerSecond]
public class WholeReplay
{
    private const int Hz = 100;
    private const int Seconds = 600;
    private readonly byte[] text = TextOf(TwoLightSignal.BlocksOf(TwoLightSignal.At(Hz, Seconds), Hz));

    [Benchmark(Baseline = true, OperationsPerInvoke = Hz * Seconds)]
    public double SplitAndAverage()
    {
        using var lines = new StreamReader(new MemoryStream(text));
        lines.ReadLine();
        var sum = 0.0;
        while (lines.ReadLine() is { } line)
        {
            var fields = line.Split(',');
            sum += double.Parse(fields[2]) + double.Parse(fields[3]);
        }

        return sum / (Hz * Seconds);
    }

    [Benchmark(OperationsPerInvoke = Hz * Seconds)]
    public int ReadAndJudge()
    {
        using var recording = CsvRecording.Open(new MemoryStream(text), "hut.csv", new CsvOptions(FullScaleCounts: TwoLightSignal.FullScaleCounts));
        var reader = new FingerReader(recording.Header, CalibrationCurve.TextbookLine, new ReadingOptions());
        var found = new FoundResults();
        using (recording.Blocks(CancellationToken.None).Subscribe(block => reader.Read(block, found)))
        {
            reader.Finish(found);
        }

        return found.UsableSeconds;
    }

    private static byte[] TextOf(IReadOnlyList<SampleBlock> blocks)
    {
        using var lines = new StringWriter();
        var writer = new CsvRecordingWriter(lines, SampleColumns.Red | SampleColumns.Infrared, new SampleRate(Hz));
        foreach (var block in blocks)
        {
            writer.Write(block);
        }

        return Encoding.UTF8.GetBytes(lines.ToString());
    }
}
