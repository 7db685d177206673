using PulseStream.Readings;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Signal;
using PulseStream.Sources;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Inputs;

/// <summary>What a recording says: what the archive kept of it, or what a run over it finds.</summary>
internal sealed class RecordingFindings
{
    private readonly List<Reading> _readings = [];
    private readonly List<Sitting> _sittings = [];
    private readonly List<Beat> _beats = [];

    public IReadOnlyList<Reading> Readings => _readings;

    public IReadOnlyList<Sitting> Sittings => _sittings;

    public IReadOnlyList<Beat> Beats => _beats;

    public static RecordingFindings Of(OpenedRecording opened, CancellationToken cancel)
    {
        var found = new RecordingFindings();
        if (opened.Session is { } archived)
        {
            found._readings.AddRange(archived.Readings());
            found._sittings.AddRange(archived.Sittings());
            found._beats.AddRange(archived.Beats());
            return found;
        }

        var judgement = new Judgement(CalibrationCurve.TextbookLine, new ReadingOptions(), TriagePolicy.AdultsAtHomeSeaLevel, new Circumstances(), []);
        Exception? failure = null;
        using (MeasurementSession.Events(opened.Recording, judgement, archive: null, cancel).Subscribe(found.Take, problem => failure = problem))
        {
            return failure is null ? found : throw failure;
        }
    }

    /// <summary>The same beside the samples: beats, and readings at the beginning of the second at which they were accepted.</summary>
    public IReadOnlyList<RecordingNote> Notes(Samples.SampleRate rate) =>
    [
        .. _beats.Select(beat => new RecordingNote(Math.Max(0, (long)Math.Round(beat.RiseIndex)), null)),
        .. _readings.Select(reading => new RecordingNote(rate.FirstIndexOf(reading.SecondIndex), TextOf(reading))),
    ];

    // In letters that every format holds.
    private static string TextOf(Reading reading)
    {
        var interval = reading.Spo2.HasInterval ? $", 95 % interval {Math.Floor(10 * reading.Spo2.LowPercent) / 10:0.0} to {Math.Ceiling(10 * reading.Spo2.HighPercent) / 10:0.0} %" : "";
        return $"SpO2 {reading.WholeSpo2Percent} %{interval}{(reading.PulseRatePerMinute is { } pulse ? $", pulse {pulse} /min" : "")}";
    }

    private void Take(SessionEvent told)
    {
        switch (told)
        {
            case ReadingAccepted { Reading: var reading }:
                _readings.Add(reading);
                break;
            case SittingEnded { Sitting: var sitting }:
                _sittings.Add(sitting);
                break;
            case BeatFound { Beat: var beat }:
                _beats.Add(beat);
                break;
            default:
                break;
        }
    }
}
