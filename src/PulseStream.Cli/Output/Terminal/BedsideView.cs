using PulseStream.Cli.Inputs;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Triage;
using Spectre.Console;
using Spectre.Console.Rendering;
using Words = Spectre.Console.Text;

namespace PulseStream.Cli.Output.Terminal;

/// <summary>What a bedside reader sees of a running session: numbers while they can be believed, what to do where not, wave, readings, advice.</summary>
/// <param name="header">The recording.</param>
/// <param name="heldSeconds">Seconds that a value has to hold to be accepted.</param>
internal sealed class BedsideView(RecordingHeader header, int heldSeconds)
{
    private const int WaveRows = 6;
    private const int ShownReadings = 4;

    // Colour says nothing that words do not say as well; with NO_COLOR they stand alone.
    private static readonly Style Plain = Style.Plain;
    private static readonly Style Strong = new(decoration: Decoration.Bold);
    private static readonly Style Quiet = new(Color.Grey);
    private static readonly Style Urgent = new(Color.Red, decoration: Decoration.Bold);

    private readonly WaveWindow wave = new(header);
    private readonly List<string> readings = [];
    private string numerals = Numerals(null);
    private string coaching = "Waiting for the first samples.";
    private string condition = "";
    private string notice = "";
    private Advice? advice;
    private int steadySeconds;

    /// <summary>Takes the samples of a block.</summary>
    public void See(SampleBlock block) => wave.See(block);

    /// <summary>Takes what the session tells.</summary>
    public void Take(SessionEvent told)
    {
        switch (told)
        {
            case SecondJudged judged:
                Take(judged);
                break;
            case ReadingAccepted { Reading: var reading }:
                readings.Add($"{reading.SecondIndex,6} s  SpO2 {reading.WholeSpo2Percent} % ({Interval.Outward(reading.Spo2)}){Pulse(reading.PulseRatePerMinute)}");
                break;
            case AdviceGiven given:
                advice = given.Advice;
                break;
            case ArchiveLost:
                notice = "The archive can no longer be written: nothing from here on is kept.";
                break;
            case SittingEnded { Sitting: var sitting }:
                readings.Add($"{sitting.ToSecond,6} s  finger out: {WireNames.Of(sitting.Outcome)}");
                break;
            case SessionEnded:
                coaching = "The session has ended.";
                numerals = Numerals(null);
                break;
            default:
                break;
        }
    }

    /// <summary>How it stands with the line, where that is worth saying; empty where samples arrive.</summary>
    public void Say(string line) => notice = line;

    /// <summary>The screen as it is now.</summary>
    /// <param name="columns">Width of the terminal.</param>
    /// <param name="hasUnicode">Whether it shows Unicode.</param>
    public IRenderable Picture(int columns, bool hasUnicode)
    {
        var lines = new List<IRenderable> { new Words($"{SourceWords}, {header.Rate.Hz:0.###} Hz", Quiet) };
        lines.AddRange(wave.Rows(Math.Max(1, columns - 1), WaveRows, hasUnicode).Select(row => new Words(row, Plain) { Overflow = Overflow.Crop }));
        lines.Add(new Words(numerals, Strong));
        lines.Add(new Words(condition, Quiet));
        lines.Add(new Words(coaching, Strong));
        lines.Add(new Words(notice, Urgent));
        lines.AddRange(readings.TakeLast(ShownReadings).Select(line => new Words(line, Plain)));
        if (advice is not null)
        {
            lines.Add(new Words($"ADVICE: {AdviceLevelName.Of(advice.Level)}", advice.Level >= AdviceLevel.DoctorNow ? Urgent : Strong));
            lines.Add(new Words(advice.Text, Plain));
        }

        lines.Add(new Words("No medical device, no diagnosis. Ctrl-C ends it; what was received is kept.", Quiet));
        return new Rows(lines);
    }

    private string SourceWords => header.Source == RecordingPaths.StandardInput ? "standard input" : header.Source;

    private static string Numerals(UsableSecond? usable) =>
        $"SpO2 {usable?.Spo2?.Percent.ToString("0", null) ?? "--"} %    pulse {usable?.PulseRatePerMinute?.ToString("0", null) ?? "--"} /min    perfusion {usable?.PerfusionPercent?.ToString("0.0", null) ?? "--"} %";

    private static string Pulse(int? perMinute) => perMinute is { } known ? $", pulse {known} /min" : "";

    private void Take(SecondJudged judged)
    {
        steadySeconds = Math.Min(judged.SteadySeconds, heldSeconds);
        numerals = Numerals(judged.Second.Usable);
        coaching = CoachingLine.Of(judged.Second, steadySeconds >= heldSeconds);
        condition = judged.Second switch
        {
            { Unusable: { } refused } => $"refused: {string.Join(", ", WireNames.Of(refused.Reasons))}",
            { Usable: { Warnings: not Reasons.None } warned } => $"steady {steadySeconds} of {heldSeconds} s, {string.Join(", ", WireNames.Of(warned.Warnings))}",
            _ => $"steady {steadySeconds} of {heldSeconds} s",
        };
    }
}
