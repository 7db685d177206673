using System.Globalization;
using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Tests.Archive;

/// <summary>Invented sessions of a mountain hut's oximeter, and ways to write them.</summary>
internal static class Sessions
{
    public static readonly DateTimeOffset Start = DateTimeOffset.Parse("2026-03-01T23:30:00+01:00", CultureInfo.InvariantCulture);

    public static readonly SessionSettings Settings = new("textbook-line", """{"name":"textbook-line","coefficients":[110,-25]}""", "adults-at-home", """{"name":"adults-at-home"}""", "0.1.0");

    public static readonly SessionIdentity Identity = new("night", "hut-07", "clip-3", "index-left");

    public static RecordingHeader Header(SampleColumns columns = SampleColumns.Red | SampleColumns.Infrared, DateTimeOffset? start = null, double hz = 100) =>
        new("night.csv", new SampleRate(hz), columns, 262143, start);

    public static SessionWriter Begin(string archive, RecordingHeader? header = null, SessionIdentity? identity = null, JournalPace pace = JournalPace.Replay) =>
        SessionWriter.Create(archive, identity ?? Identity, header ?? Header(start: Start), Settings, pace);

    /// <summary>Writes blocks and seals them; the folder of the session.</summary>
    public static string Write(string archive, IReadOnlyList<SampleBlock> blocks, RecordingHeader? header = null, SessionIdentity? identity = null)
    {
        using var writer = Begin(archive, header, identity);
        foreach (var block in blocks)
        {
            writer.Append(block);
        }

        AppendResults(writer);
        writer.Seal(new(blocks.Sum(b => (long)b.Samples.Length), 7, 2, 1));
        return writer.Folder;
    }

    public static void AppendResults(SessionWriter writer)
    {
        foreach (var second in SomeSeconds)
        {
            writer.Append(second);
        }

        foreach (var beat in SomeBeats)
        {
            writer.Append(in beat);
        }

        foreach (var reading in SomeReadings)
        {
            writer.Append(reading);
        }

        writer.Append(SomeSitting);
        writer.Append(SomeAdvice);
    }

    public static readonly IReadOnlyList<Second> SomeSeconds =
    [
        new UnusableSecond(0, Reasons.Settling | Reasons.Motion, null),
        new UsableSecond(1, new(96.25, 95.5, 97), 71.5, 2.25, Reasons.LowPerfusion | Reasons.Irregular),
        new UsableSecond(2, null, null, null, Reasons.None),
    ];

    public static readonly IReadOnlyList<Beat> SomeBeats =
        [new(100, double.NaN, 0.5, 2.5, 0.9), new(187.5, 0.875, double.NaN, double.NaN, 1)];

    public static readonly IReadOnlyList<Reading> SomeReadings =
        [new(30, 96, new(96.25, 95.5, 97), 71, 2.25, 5, Reasons.None), new(60, 91, new(91.4, 90.5, 92.25), null, null, 6, Reasons.Irregular)];

    public static readonly Sitting SomeSitting = new(0, 90, SittingOutcome.Accepted, SomeReadings[0], SomeReadings[1], null, 2, Reasons.Settling);

    public static readonly ArchivedAdvice SomeAdvice = new(90, "recheck", "Sit down, warm your hand – und miss erneut.", 60, "band-90-95");

    /// <summary>Counts of an 18-bit converter: a slow pulse and noise of 15 counts, seed in sight.</summary>
    public static SampleBlock WholeCounts(long firstIndex, int count, int seed = 1)
    {
        var random = new Random(seed);
        var samples = new Sample[count];
        for (var i = 0; i < count; i++)
        {
            var pulse = Math.Sin((firstIndex + i) * 0.0754);
            samples[i] = Sample.OfLight(Math.Round(140_000 + (900 * pulse) + Noise()), Math.Round(150_000 + (1800 * pulse) + Noise()));
        }

        return new(firstIndex, samples);

        // The sum of twelve uniform values is as good as normal (common practice).
        double Noise() => 15 * (Enumerable.Range(0, 12).Sum(_ => random.NextDouble()) - 6);
    }

    /// <summary>Every sample that a session gives back, with its index.</summary>
    public static IReadOnlyList<(long Index, Sample Sample)> ReadBack(string folder)
    {
        using var recording = ArchivedRecording.Open(folder);
        var all = new List<(long, Sample)>();
        Exception? error = null;
        using (recording.Blocks(CancellationToken.None).Subscribe(new Collector(block => all.AddRange(Indexed(block)), e => error = e)))
        {
            return error is null ? all : throw error;
        }
    }

    public static IEnumerable<(long Index, Sample Sample)> Indexed(SampleBlock block) =>
        block.Samples.ToArray().Select((sample, i) => (block.FirstIndex + i, sample));

    private sealed class Collector(Action<SampleBlock> next, Action<Exception> error) : IObserver<SampleBlock>
    {
        public void OnNext(SampleBlock value) => next(value);

        public void OnError(Exception error1) => error(error1);

        public void OnCompleted()
        {
        }
    }
}
