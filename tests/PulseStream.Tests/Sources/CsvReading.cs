using System.Text;
using PulseStream.Samples;
using PulseStream.Sources.Csv;

namespace PulseStream.Tests.Sources;

/// <summary>Everything that came out of reading one text as CSV.</summary>
internal sealed class CsvReading
{
    public List<SampleBlock> Blocks { get; } = [];

    public List<string> Said { get; } = [];

    public RecordingHeader? Header { get; private set; }

    public SampleTally Tally { get; private set; } = SampleTally.Empty;

    public Exception? Failure { get; private set; }

    public bool Completed { get; private set; }

    public IEnumerable<(long Index, Sample Sample)> Samples =>
        Blocks.SelectMany(block => block.Samples.ToArray().Select((sample, at) => (block.FirstIndex + at, sample)));

    public long[] Indices => [.. Samples.Select(sample => sample.Index)];

    public string Sentence => ((BadInputException)Failure!).Message;

    public static CsvReading Of(string text, double? rateHz = null) => Of(Encoding.UTF8.GetBytes(text), rateHz);

    public static CsvReading Of(byte[] bytes, double? rateHz = null) => Of(new MemoryStream(bytes), rateHz, CancellationToken.None);

    public static CsvReading Of(Stream stream, double? rateHz, CancellationToken cancel)
    {
        var reading = new CsvReading();
        try
        {
            using var recording = CsvRecording.Open(stream, "night.csv", new CsvOptions(rateHz, Say: reading.Said.Add), cancel);
            reading.Header = recording.Header;
            recording.Blocks(cancel).Subscribe(reading.Blocks.Add, problem => reading.Failure = problem, () => reading.Completed = true);
            reading.Tally = recording.Tally;
        }
        catch (BadInputException problem)
        {
            reading.Failure = problem;
        }

        return reading;
    }

    /// <summary>A header and rows 'sample,red,infrared' for these counters.</summary>
    public static string Counted(IEnumerable<long> counters) =>
        "sample,red,infrared\n" + string.Concat(counters.Select(counter => $"{counter},100,200\n"));

    public static IEnumerable<long> Run(long first, long count) => Enumerable.Range(0, (int)count).Select(at => first + at);
}
