using PulseStream.Cli.Output.Text;
using PulseStream.Readings;
using PulseStream.Sessions.Events;
using PulseStream.Triage;

namespace PulseStream.Cli.Output;

/// <summary>Shows sessions to people: what was accepted, what was refused as runs of seconds, sittings, advice.</summary>
/// <param name="text">Where to.</param>
/// <param name="withBeats">Whether beats are shown.</param>
internal sealed class TextPrinter(TextWriter text, bool withBeats) : ResultPrinter
{
    private readonly RefusedRun _run = new();

    public static void Print(TextWriter text, Advice advice)
    {
        text.WriteLine();
        text.WriteLine($"  ADVICE: {AdviceLevelName.Of(advice.Level)}");
        foreach (var line in Wrapped.Lines(advice.Text))
        {
            text.WriteLine($"  {line}");
        }

        text.WriteLine("  Because:");
        foreach (var line in advice.Because.SelectMany(rule => Wrapped.Lines(rule, hanging: true)))
        {
            text.WriteLine($"  {line}");
        }

        text.WriteLine();
    }

    public override void Print(SessionEvent told)
    {
        switch (told)
        {
            case SessionStarted started:
                Print(started);
                break;
            case BeatFound beat when withBeats:
                Print(beat);
                break;
            case SecondJudged { Second.Unusable: { } unusable }:
                Write(_run.Add(unusable));
                break;
            case SecondJudged:
                Write(_run.End());
                break;
            case ReadingAccepted { Reading: var reading }:
                Print(reading);
                break;
            case SittingEnded { Sitting: var sitting }:
                Write(_run.End());
                Print(sitting);
                break;
            case AdviceGiven { Advice: var advice }:
                Print(text, advice);
                break;
            case SessionEnded ended:
                Write(_run.End());
                Print(ended);
                break;
            default:
                break;
        }

        text.Flush();
    }

    private void Write(string? line)
    {
        if (line is not null)
        {
            text.WriteLine(line);
        }
    }

    private void Print(SessionStarted started)
    {
        var columns = string.Join(", ", WireNames.Of(started.Header.Columns));
        text.WriteLine(columns.Length == 0
            ? $"{started.Header.Source}: finished readings of an instrument"
            : $"{started.Header.Source}: {started.Header.Rate.Hz:0.###} Hz, {columns}");
        text.WriteLine($"  curve {started.Judgement.Curve.Name}, policy {started.Judgement.Policy.Name}. No medical device, no diagnosis.");
    }

    private void Print(BeatFound found) => text.WriteLine(Row.Of(
        $"{found.Seconds:0.00} s",
        $"beat{Known(", interval {0:0.00} s", found.Beat.IntervalSeconds)}{Known(", R {0:0.000}", found.Beat.RatioOfRatios)}"));

    private void Print(Reading reading) => text.WriteLine(Row.Of(
        $"{reading.SecondIndex} s",
        $"READING: SpO2 {reading.WholeSpo2Percent} % ({Interval.Outward(reading.Spo2)}){Known(", pulse {0:0} /min", reading.PulseRatePerMinute)}{Known(", perfusion {0:0.00} %", reading.PerfusionPercent)}"));

    private void Print(Sitting sitting)
    {
        var count = sitting.ReadingCount == 1 ? "1 reading" : $"{sitting.ReadingCount} readings";
        var pulse = sitting.RecordReading?.PulseRatePerMinute ?? sitting.MedianPulseRatePerMinute;
        text.WriteLine(Row.Of(
            $"{sitting.FromSecond}–{sitting.ToSecond} s",
            $"SITTING: {WireNames.Of(sitting.Outcome)}{Known(", SpO2 {0:0} %", sitting.RecordReading?.WholeSpo2Percent)}{Known(", pulse {0:0} /min", pulse)}, {count}"));
    }

    private void Print(SessionEnded ended)
    {
        text.WriteLine($"  {ended.Seconds} s judged, {ended.UsableSeconds} usable, {ended.Readings} accepted as readings.");
        text.WriteLine($"  {ended.Tally.Samples} samples, {ended.Tally.Missing} missing, {ended.Tally.RefusedRows} rows refused.");
        text.WriteLine();
    }

    private static string Known(string format, double? value) =>
        value is { } number && double.IsFinite(number) ? string.Format(format, number) : "";
}
