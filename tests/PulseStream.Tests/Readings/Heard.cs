using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;
using PulseStream.Simulation;

namespace PulseStream.Tests.Readings;

/// <summary>All that a reader told of a stream, in its order.</summary>
internal sealed class Heard : IReadingObserver
{
    public List<object> Events { get; } = [];

    public IEnumerable<Beat> Beats => Events.OfType<Beat>();

    public IEnumerable<Second> Seconds => Events.OfType<Second>();

    public IEnumerable<UsableSecond> Usable => Seconds.Select(s => s.Usable).OfType<UsableSecond>();

    public IEnumerable<Reading> Readings => Events.OfType<Reading>();

    public IEnumerable<Sitting> Sittings => Events.OfType<Sitting>();

    /// <summary>Reads a stream to its end; a null is a missing sample, block lengths are taken in turn.</summary>
    public static Heard Of(
        double rateHz,
        Sample?[] samples,
        SampleColumns columns = SampleColumns.Red | SampleColumns.Infrared,
        CalibrationCurve? curve = null,
        double? fullScale = null,
        params ReadOnlySpan<int> cuts)
    {
        var heard = new Heard();
        var reader = new FingerReader(
            new("test", new SampleRate(rateHz), columns, fullScale), curve ?? CalibrationCurve.TextbookLine, new ReadingOptions());
        var block = 0;
        for (var at = 0; at < samples.Length;)
        {
            var longest = cuts.IsEmpty ? samples.Length : cuts[block++ % cuts.Length];
            var present = samples.Skip(at).Take(longest).TakeWhile(s => s is not null).Select(s => s!.Value).ToArray();
            if (present.Length > 0)
            {
                reader.Read(new(at, present), heard);
            }

            at += Math.Max(1, present.Length);
        }

        reader.Finish(heard);
        return heard;
    }

    /// <summary>Reads a simulated recording to its end.</summary>
    public static Heard Of(Scenario scenario)
    {
        var recording = new SimulatedRecording(scenario);
        var heard = new Heard();
        var reader = new FingerReader(recording.Header, CalibrationCurve.TextbookLine, new ReadingOptions());
        foreach (var block in recording.Blocks(1000))
        {
            reader.Read(block, heard);
        }

        reader.Finish(heard);
        return heard;
    }

    public Reasons ReasonsAt(long second) => Seconds.SingleOrDefault(s => s.SecondIndex == second).Unusable?.Reasons ?? Reasons.None;

    public void OnBeat(in Beat beat) => Events.Add(beat);

    public void OnSecond(in Second second) => Events.Add(second);

    public void OnReading(Reading reading) => Events.Add(reading);

    public void OnSitting(Sitting sitting) => Events.Add(sitting);
}
