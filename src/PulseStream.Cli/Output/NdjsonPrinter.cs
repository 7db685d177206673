using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sessions.Events;
using PulseStream.Triage;

namespace PulseStream.Cli.Output;

/// <summary>Shows events as one JSON object a line.</summary>
/// <param name="line">Where to.</param>
/// <param name="withBeats">Whether beats have lines.</param>
internal sealed class NdjsonPrinter(NdjsonLine line, bool withBeats) : ResultPrinter
{
    // A rate such as 62.4739 Hz is told as it is used; R is compared to 1e-5.
    private const int RateDecimals = 9;
    private const int RatioDecimals = 6;

    public static void Print(NdjsonLine line, Advice advice) => line.Begin(WireNames.Advice)
        .Add(WireNames.Second, advice.SecondIndex)
        .Add(WireNames.Level, AdviceLevelName.Of(advice.Level))
        .Add(WireNames.Text, advice.Text)
        .Add(WireNames.RecheckAfterMinutes, (long?)advice.RecheckAfterMinutes)
        .Add(WireNames.Because, advice.Because)
        .Add(WireNames.Policy, advice.PolicyName)
        .End();

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
            case SecondJudged { Second.Usable: { } usable }:
                Print(usable);
                break;
            case SecondJudged { Second.Unusable: { } unusable }:
                Print(unusable);
                break;
            case ReadingAccepted { Reading: var reading }:
                Print(reading);
                break;
            case SittingEnded { Sitting: var sitting }:
                Print(sitting);
                break;
            case AdviceGiven { Advice: var advice }:
                Print(line, advice);
                break;
            case SessionEnded ended:
                Print(ended);
                break;
            default:
                break;
        }
    }

    private void Print(SessionStarted started) => line.Begin(WireNames.Session)
        .Add(WireNames.Source, started.Header.Source)
        .AddRounded(WireNames.SampleRateHz, started.Header.Columns == SampleColumns.None ? null : started.Header.Rate.Hz, RateDecimals)
        .Add(WireNames.Columns, WireNames.Of(started.Header.Columns))
        .Add(WireNames.Curve, started.Judgement.Curve.Name)
        .Add(WireNames.Policy, started.Judgement.Policy.Name)
        .Add(WireNames.Version, ProgramVersion.Text)
        .Add(WireNames.CurveHash, started.Judgement.CurveHash)
        .Add(WireNames.PolicyHash, started.Judgement.PolicyHash)
        .End();

    private void Print(BeatFound found) => line.Begin(WireNames.Beat)
        .Add(WireNames.Time, found.Seconds)
        .Add(WireNames.Interval, found.Beat.IntervalSeconds)
        .AddRounded(WireNames.Ratio, found.Beat.RatioOfRatios, RatioDecimals)
        .Add(WireNames.Quality, found.Beat.Quality)
        .End();

    private void Print(UsableSecond second) => line.Begin(WireNames.Second)
        .Add(WireNames.Second, second.SecondIndex)
        .Add(WireNames.Usable, true)
        .Add(WireNames.Spo2, second.Spo2?.Percent)
        .Add(WireNames.Spo2Low, second.Spo2?.LowPercent)
        .Add(WireNames.Spo2High, second.Spo2?.HighPercent)
        .Add(WireNames.Pulse, second.PulseRatePerMinute)
        .Add(WireNames.Perfusion, second.PerfusionPercent)
        .Add(WireNames.ReasonList, WireNames.Of(second.Warnings))
        .End();

    private void Print(UnusableSecond second) => line.Begin(WireNames.Second)
        .Add(WireNames.Second, second.SecondIndex)
        .Add(WireNames.Usable, false)
        .Add(WireNames.Spo2, (double?)null)
        .Add(WireNames.Spo2Low, (double?)null)
        .Add(WireNames.Spo2High, (double?)null)
        .Add(WireNames.Pulse, (double?)null)
        .Add(WireNames.Perfusion, second.PerfusionPercent)
        .Add(WireNames.ReasonList, WireNames.Of(second.Reasons))
        .End();

    private void Print(Reading reading) => line.Begin(WireNames.Reading)
        .Add(WireNames.Second, (long?)reading.SecondIndex)
        .Add(WireNames.Spo2, (long?)reading.WholeSpo2Percent)
        .Add(WireNames.Spo2Low, reading.Spo2.LowPercent)
        .Add(WireNames.Spo2High, reading.Spo2.HighPercent)
        .Add(WireNames.Pulse, (long?)reading.PulseRatePerMinute)
        .Add(WireNames.Perfusion, reading.PerfusionPercent)
        .Add(WireNames.HeldSeconds, (long?)reading.HeldSeconds)
        .End();

    private void Print(Sitting sitting) => line.Begin(WireNames.Sitting)
        .Add(WireNames.From, (long?)sitting.FromSecond)
        .Add(WireNames.To, (long?)sitting.ToSecond)
        .Add(WireNames.Outcome, WireNames.Of(sitting.Outcome))
        .Add(WireNames.Spo2, (long?)sitting.RecordReading?.WholeSpo2Percent)
        .Add(WireNames.Pulse, (long?)(sitting.RecordReading?.PulseRatePerMinute ?? sitting.MedianPulseRatePerMinute))
        .Add(WireNames.ReadingCount, (long?)sitting.ReadingCount)
        .Add(WireNames.ReasonList, WireNames.Of(sitting.Reasons))
        .End();

    private void Print(SessionEnded ended) => line.Begin(WireNames.End)
        .Add(WireNames.Samples, (long?)ended.Tally.Samples)
        .Add(WireNames.Missing, (long?)ended.Tally.Missing)
        .Add(WireNames.RefusedRows, (long?)ended.Tally.RefusedRows)
        .Add(WireNames.Seconds, (long?)ended.Seconds)
        .Add(WireNames.UsableSeconds, (long?)ended.UsableSeconds)
        .Add(WireNames.ReadingCount, (long?)ended.Readings)
        .End();
}
