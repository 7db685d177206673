using System.Text.Json;
using PulseStream.Readings;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Triage;

namespace PulseStream.Page.Live;

/// <summary>What the page is told, as JSON: every member that travels is named here.</summary>
internal static class PageMessage
{
    // A line of a few pixels shows no more.
    private const int WaveDecimals = 3;

    public static PageEvent Hello(DateTimeOffset now, bool hasArchive) =>
        Of(PageNames.Hello, new { nowUnixMs = now.ToUnixTimeMilliseconds(), hasArchive });

    public static PageEvent Session(SessionStarted started, int heldSeconds, double speed) => Of(PageNames.Session, new
    {
        source = started.Header.Source,
        sampleRateHz = started.Header.Rate.Hz,
        curve = started.Judgement.Curve.Name,
        policy = started.Judgement.Policy.Name,
        hasRed = started.Header.Columns.HasFlag(Samples.SampleColumns.Red),
        heldSeconds,
        speed,
    });

    public static PageEvent Link(PageLink link) => Of(PageNames.Link, new { state = PageNames.Of(link) });

    public static PageEvent Person(string? pseudonym, bool? isRight) => Of(PageNames.Person, new { pseudonym, isRight });

    public static PageEvent Feeling(Feeling feeling) => Of(PageNames.Feeling, new { feeling = PageNames.Of(feeling) });

    public static PageEvent Unkept(string problem) => Of(PageNames.Unkept, new { problem });

    public static PageEvent Wave(long index, int stride, IEnumerable<double> heights) => Of(PageNames.Wave, new
    {
        index,
        stride,
        heights = heights.Select(height => double.IsNaN(height) ? (double?)null : Math.Round(height, WaveDecimals)),
    });

    public static PageEvent Second(SecondJudged told, int heldSeconds)
    {
        var usable = told.Second.Usable;
        return Of(PageNames.Second, new
        {
            second = told.Second.SecondIndex,
            usable = usable is not null,
            spo2 = usable?.Spo2 is { } spo2 ? (double?)Math.Round(spo2.Percent) : null,
            pulse = usable?.PulseRatePerMinute is { } pulse ? (double?)Math.Round(pulse) : null,
            steady = Math.Min(told.SteadySeconds, heldSeconds),
            line = CoachingLine.Of(told.Second, told.SteadySeconds >= heldSeconds),
        });
    }

    public static PageEvent Reading(Reading reading, DateTimeOffset at) => Of(PageNames.Reading, new
    {
        atUnixMs = at.ToUnixTimeMilliseconds(),
        spo2 = reading.WholeSpo2Percent,
        // Outwards: a rounded interval must not be narrower than the one that was found.
        spo2Low = Math.Floor(reading.Spo2.LowPercent * 10) / 10,
        spo2High = Math.Ceiling(reading.Spo2.HighPercent * 10) / 10,
        pulse = reading.PulseRatePerMinute,
    });

    public static PageEvent Sitting(Sitting sitting, DateTimeOffset at) => Of(PageNames.Sitting, new
    {
        atUnixMs = at.ToUnixTimeMilliseconds(),
        outcome = PageNames.Of(sitting.Outcome),
        seconds = sitting.ToSecond - sitting.FromSecond,
        spo2 = sitting.RecordReading?.WholeSpo2Percent,
        pulse = sitting.RecordReading?.PulseRatePerMinute ?? sitting.MedianPulseRatePerMinute,
        readings = sitting.ReadingCount,
    });

    public static PageEvent Advice(Advice advice, DateTimeOffset at) => Of(PageNames.Advice, new
    {
        atUnixMs = at.ToUnixTimeMilliseconds(),
        level = AdviceLevelName.Of(advice.Level),
        text = advice.Text,
        recheckAfterMinutes = advice.RecheckAfterMinutes,
    });

    private static PageEvent Of<T>(string name, T told) => new(name, JsonSerializer.Serialize(told));
}
