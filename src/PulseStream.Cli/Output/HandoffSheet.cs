using System.Globalization;
using System.Net;
using System.Text;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;

namespace PulseStream.Cli.Output;

/// <summary>One page for whoever takes over: who, what is usual, the course, the last reading, what was advised. It prints to one sheet of A4.</summary>
internal static class HandoffSheet
{
    // Changes and checks beyond these would not fit on the sheet.
    private const int MostRows = 5;

    private const string Head =
        """
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><title>Handoff</title>
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
        <style>
        @page { size: A4; margin: 14mm }
        body { font: 11pt/1.35 sans-serif; color: #111; max-width: 182mm; margin: 0 auto }
        h1 { font-size: 15pt; margin: 0 0 2mm } h2 { font-size: 11pt; margin: 4mm 0 1mm; border-bottom: 1px solid #999 }
        .key { display: flex; gap: 8mm; margin: 2mm 0 } .key div { flex: 1; border: 1px solid #999; padding: 2mm }
        .key b { display: block; font-size: 20pt } ul { margin: 1mm 0; padding-left: 5mm }
        .write { border-bottom: 1px solid #111; display: inline-block; width: 120mm; height: 6mm }
        svg { width: 100%; height: auto } svg text { font-size: 11px; fill: #333 } .grid { stroke: #ddd }
        .usual { stroke: #0a6; stroke-width: 1.5; stroke-dasharray: 6 3 } .change { fill: #d50; opacity: .18 } circle { fill: #124 }
        .small { font-size: 8.5pt; color: #444; margin-top: 3mm }
        </style></head><body>

        """;

    public static string HtmlOf(PersonTrend trend)
    {
        var html = new StringBuilder(Head);
        var (baseline, last) = (trend.Course.Baseline, trend.Last);
        Add(html, $"<h1>Oxygen saturation of {trend.Person}</h1><div>{trend.Days.Readings.Count} accepted readings on {trend.DaysWithReadings} days, {Time(trend.Days.Readings[0].Time)} to {Time(trend.Days.Readings[^1].Time)}</div>");
        Add(html, $"<div class=\"key\"><div>usual<b>{baseline.Percent:0.0} %</b>95 % interval {baseline.LowPercent:0.0} to {baseline.HighPercent:0.0}</div>");
        Add(html, $"<div>last, {Time(last.Time)}<b>{last.Reading.WholeSpo2Percent} %</b>{Quality(last)}</div><div>below usual<b>{trend.ShownDropPoints:0.0} points</b>{ChangeInWords(trend)}</div></div>");
        html.Append("<h2>Course</h2>").Append(CourseFigure.Of(trend)).Append('\n');
        html.Append("<ul>");
        foreach (var change in trend.Course.Changes.TakeLast(MostRows))
        {
            Add(html, $"<li>{(change.SizePoints < 0 ? "Fall" : "Rise")} of {Math.Abs(change.SizePoints):0.0} points, {Time(change.From)} to {Time(change.To)}{(change.IsOtherSensor ? "; the sensor changed meanwhile" : "")}</li>");
        }

        foreach (var pair in trend.Days.Exertions.TakeLast(MostRows))
        {
            Add(html, $"<li>After exertion, {Time(pair.Time)}: {pair.RestPercent} % at rest, {pair.AfterPercent} % after it{(pair.DropPoints >= ExertionPair.SaidPoints ? $", fell by {pair.DropPoints} points" : "")}</li>");
        }

        html.Append("</ul>");
        Advised(html, trend);
        Add(html, $"<h2>Symptoms</h2><div>{Felt(trend.Days.LastAdvice)}</div>");
        html.Append("<span class=\"write\"></span><h2>What was done</h2><span class=\"write\"></span><br><span class=\"write\"></span>");
        Add(html, $"<p class=\"small\">Points: the reading of each sitting. Dashed: usual, the highest steady level of the last 30 days. Shaded: lasting changes, found by cumulative sums. {Height(trend)}No medical device, no diagnosis: a person who feels unwell needs a doctor whatever the numbers say.</p>");
        return html.Append("</body></html>\n").ToString();
    }

    private static void Advised(StringBuilder html, PersonTrend trend)
    {
        html.Append("<h2>Advised</h2>");
        if (trend.Days.LastAdvice is { } advice)
        {
            Add(html, $"<div><strong>{advice.Level}</strong>: {advice.Text}</div><div class=\"small\">Because: {advice.Because}</div>");
        }

        html.Append("<ul>");
        foreach (var missed in trend.Missed.TakeLast(MostRows))
        {
            Add(html, $"<li>Recheck missed, due {Time(missed.Due)}</li>");
        }

        html.Append("</ul>");
    }

    // What the person felt stands among the rules that spoke.
    private static string Felt(ArchivedAdvice? last) =>
        last?.Because.Split("; ").FirstOrDefault(rule => rule.StartsWith("Feeling ", StringComparison.Ordinal)) is { } rule
            ? $"{rule.Split([':', ','])[0]}, at the last advice"
            : "Not asked at the last advice";

    private static string Quality(TimedReading last) => string.Create(
        CultureInfo.InvariantCulture,
        $"{Interval.Outward(last.Reading.Spo2)}{(last.Reading.PulseRatePerMinute is { } pulse ? $", pulse {pulse}" : "")}{(last.Reading.PerfusionPercent is { } perfusion ? $", perfusion {perfusion:0.0} %" : "")}, held {last.Reading.HeldSeconds} s");

    private static string ChangeInWords(PersonTrend trend) => trend.Course.Changes.Count == 0 ? "no lasting change found" : trend.Course.Changes.Count == 1 ? "one lasting change" : $"{trend.Course.Changes.Count} lasting changes";

    private static string Height(PersonTrend trend) => trend is { Expected: { } expected, AltitudeMetres: { } metres }
        ? string.Create(CultureInfo.InvariantCulture, $"At {metres:0} m height alone gives healthy adults {expected.LowPercent:0} to {expected.HighPercent:0} %; no limit is lowered by it. ")
        : "";

    private static string Time(DateTimeOffset time) => time.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture);

    // Every value is encoded: what an archive holds is no page.
    private static void Add(StringBuilder html, FormattableString part)
    {
        var encoded = part.GetArguments().Select(value => value is string text ? WebUtility.HtmlEncode(text) : value).ToArray();
        html.Append(string.Format(CultureInfo.InvariantCulture, part.Format, encoded)).Append('\n');
    }
}
