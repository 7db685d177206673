using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Benchmarks;

/// <summary>What a reader found, kept to be counted or archived.</summary>
internal sealed class FoundResults : IReadingObserver
{
    private readonly List<Beat> beats = [];
    private readonly List<Second> seconds = [];
    private readonly List<Reading> readings = [];
    private readonly List<Sitting> sittings = [];

    public int UsableSeconds => seconds.Count(second => second.IsUsable);

    public static FoundResults In(IReadOnlyList<SampleBlock> blocks, RecordingHeader header)
    {
        var found = new FoundResults();
        var reader = new FingerReader(header, CalibrationCurve.TextbookLine, new ReadingOptions());
        foreach (var block in blocks)
        {
            reader.Read(block, found);
        }

        reader.Finish(found);
        return found;
    }

    public void OnBeat(in Beat beat) => beats.Add(beat);

    public void OnSecond(in Second second) => seconds.Add(second);

    public void OnReading(Reading reading) => readings.Add(reading);

    public void OnSitting(Sitting sitting) => sittings.Add(sitting);

    public void AppendTo(SessionWriter writer)
    {
        beats.ForEach(beat => writer.Append(in beat));
        seconds.ForEach(writer.Append);
        readings.ForEach(writer.Append);
        sittings.ForEach(writer.Append);
    }
}
