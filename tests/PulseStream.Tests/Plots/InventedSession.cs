using PulseStream.Archive;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Signal;

namespace PulseStream.Tests.Plots;

/// <summary>
/// Builds an archived session of the mountain hut's oximeter from made-up seconds: each call lengthens it. Nothing here
/// comes from the signal code, so that pictures are tested by themselves.
/// </summary>
internal sealed class InventedSession(string archive, RecordingHeader header, string curveJson = """{"name":"textbook-line"}""")
{
    private const double BeatSeconds = 60.0 / 72;

    private readonly List<SampleBlock> blocks = [];
    private readonly List<Second> seconds = [];
    private readonly List<Beat> beats = [];
    private readonly List<Reading> readings = [];
    private readonly List<Sitting> sittings = [];
    private readonly List<ArchivedAdvice> advice = [];

    public static readonly RecordingHeader TwoLights =
        new("hut-evening.csv", new SampleRate(50), SampleColumns.Red | SampleColumns.Infrared, Start: new(2026, 3, 1, 23, 30, 0, TimeSpan.FromHours(1)));

    public long Length => seconds.Count;

    /// <summary>Usable seconds around a saturation, with beats.</summary>
    public InventedSession Usable(int length, double spo2, double pulse = 72, Reasons warnings = Reasons.None, double half = 0.8, double perfusionPercent = 2)
    {
        for (var i = 0; i < length; i++)
        {
            var value = spo2 + (0.3 * Math.Sin(0.7 * Length));
            Saturation? saturation = header.Columns.HasFlag(SampleColumns.Red) ? new(value, value - half, Math.Min(100, value + half)) : null;
            Add(new UsableSecond(Length, saturation, pulse + (2 * Math.Sin(0.3 * Length)), perfusionPercent, warnings));
        }

        for (var beat = Math.Ceiling((Length - length) / BeatSeconds); beat * BeatSeconds < Length; beat++)
        {
            beats.Add(new(beat * BeatSeconds * header.Rate.Hz, BeatSeconds, 0.5, 2, 1));
        }

        return this;
    }

    public InventedSession Refused(int length, Reasons reasons, double? perfusionPercent = null)
    {
        for (var i = 0; i < length; i++)
        {
            Add(new UnusableSecond(Length, reasons, perfusionPercent));
        }

        return this;
    }

    /// <summary>Seconds of which nothing was received.</summary>
    public InventedSession Missing(int length)
    {
        for (var i = 0; i < length; i++)
        {
            seconds.Add(new UnusableSecond(Length, Reasons.MissingSamples, null));
        }

        return this;
    }

    public InventedSession Accepted(int spo2)
    {
        readings.Add(new(Length - 1, spo2, new(spo2, spo2 - 1, spo2 + 1), 72, 2, 5, Reasons.None));
        return this;
    }

    public InventedSession SittingEnds(SittingOutcome outcome, int? medianPulse = null)
    {
        var from = sittings.Count == 0 ? 0 : sittings[^1].ToSecond;
        var own = readings.Where(r => r.SecondIndex >= from).ToArray();
        sittings.Add(new(from, Length, outcome, outcome == SittingOutcome.Accepted ? own.MaxBy(r => r.WholeSpo2Percent) : null, own.MinBy(r => r.WholeSpo2Percent), medianPulse, own.Length, Reasons.None));
        return this;
    }

    public InventedSession Advised(string level, int? minutes = null)
    {
        advice.Add(new(Length, level, "Invented.", minutes, "invented"));
        return this;
    }

    /// <summary>Writes and seals it; the session's folder.</summary>
    public string Seal(SessionIdentity? identity = null)
    {
        var settings = new SessionSettings("textbook-line", curveJson, "adults-at-home", "{}", "0.1.0");
        using var writer = SessionWriter.Create(archive, identity ?? new SessionIdentity("hut-evening", "guest-12"), header, settings, JournalPace.Replay);
        blocks.ForEach(writer.Append);
        seconds.ForEach(writer.Append);
        readings.ForEach(writer.Append);
        sittings.ForEach(writer.Append);
        advice.ForEach(writer.Append);
        foreach (var beat in beats)
        {
            writer.Append(in beat);
        }

        writer.Seal(new(blocks.Sum(b => (long)b.Samples.Length), 0, 0, 0));
        return writer.Folder;
    }

    private void Add(Second second)
    {
        var first = header.Rate.FirstIndexOf(second.SecondIndex);
        var samples = new Sample[header.Rate.FirstIndexOf(second.SecondIndex + 1) - first];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = SampleAt(header.Rate.SecondsAt(first + i), second);
        }

        blocks.Add(new(first, samples));
        seconds.Add(second);
    }

    private Sample SampleAt(double time, Second second)
    {
        var phase = 2 * Math.PI * time / BeatSeconds;
        var blood = Math.Sin(phase) + (0.3 * Math.Sin((2 * phase) + 1));
        var jerk = second.Unusable?.Reasons.HasFlag(Reasons.Motion) == true ? 20 * Math.Sin(9 * time) : 0;
        var infrared = second.Unusable?.Reasons.HasFlag(Reasons.NoFinger) == true ? 500 : 150_000 * Math.Exp(-0.01 * (blood + jerk));
        return header.Columns.HasFlag(SampleColumns.Red) ? Sample.OfLight(0.9 * infrared, infrared)
            : header.Columns.HasFlag(SampleColumns.Infrared) ? Sample.OfLight(double.NaN, infrared)
            : Sample.OfPleth(blood);
    }
}
