using System.Globalization;
using System.Net;
using System.Text;
using PulseStream.Archive;
using PulseStream.Plots;
using PulseStream.Readings;

namespace PulseStream.Cli.Output;

/// <summary>One archived session as a page that needs nothing else: the picture, the sittings, the readings, the advice, the method.</summary>
internal static class SessionPage
{
    private const string Head =
        """
        <!DOCTYPE html>
        <html lang="en"><head><meta charset="utf-8"><title>Session</title>
        <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'; img-src data:">
        <style>
        body { font: 11pt/1.4 sans-serif; color: #111; max-width: 1000px; margin: 1em auto; padding: 0 1em }
        h1 { font-size: 15pt } h2 { font-size: 12pt } img { max-width: 100% } .small { font-size: 8.5pt; color: #444 }
        table { border-collapse: collapse } td, th { padding: 2px 10px; border-bottom: 1px solid #ccc; text-align: left }
        </style></head><body>

        """;

    public static string HtmlOf(ArchivedSession session)
    {
        using var png = new MemoryStream();
        SessionPicture.Draw(session.Folder, png);
        var html = new StringBuilder(Head);
        Add(html, $"<h1>{session.Header.Source}</h1><div>person {session.Identity.Person ?? "unassigned"}, {Start(session)}, {session.Counts.Seconds} s, {session.Counts.UsableSeconds} usable, {ComparisonWords.Count(session.Counts.Readings, "reading")}{(session.IsCancelled ? ", cancelled before its end" : "")}{(session.IsRecovered ? ", cut off and completed later" : "")}</div>");
        Add(html, $"<img alt=\"Pulse wave with beats, SpO2 with its interval and accepted readings, pulse, perfusion, condition with reasons\" src=\"data:image/png;base64,{Convert.ToBase64String(png.GetBuffer(), 0, (int)png.Length)}\">");
        Table(html, "Sittings", ["from to", "outcome", "SpO2", "readings", "refused for"], session.Sittings().Select(Row));
        Table(html, "Readings", ["second", "SpO2", "95 % interval", "pulse", "perfusion", "held"], session.Readings().Select(Row));
        Table(html, "Advice", ["second", "level", "text", "because"], session.Advice().Select(advice => new[] { $"{advice.Second}", advice.Level, advice.Text, advice.Because }));
        Add(html, $"<p class=\"small\">Curve {session.Settings.CurveName}, policy {session.Settings.PolicyName}, version {session.Settings.Version}. A reading is a whole percent held for five seconds that could be believed; every other second was refused for the reasons shown. The interval is the scatter of the signal, not the accuracy of the device. No medical device, no diagnosis.</p>");
        return html.Append("</body></html>\n").ToString();
    }

    private static string[] Row(Sitting sitting) =>
        [$"{sitting.FromSecond} to {sitting.ToSecond} s", WireNames.Of(sitting.Outcome), Percent(sitting.RecordReading), $"{sitting.ReadingCount}", string.Join(", ", WireNames.Of(sitting.Reasons))];

    private static string[] Row(Reading reading) =>
    [
        $"{reading.SecondIndex}", Percent(reading), Interval.Outward(reading.Spo2), $"{reading.PulseRatePerMinute}",
        reading.PerfusionPercent is { } perfusion ? string.Create(CultureInfo.InvariantCulture, $"{perfusion:0.0} %") : "", $"{reading.HeldSeconds} s",
    ];

    private static string Percent(Reading? reading) => reading is null ? "none" : $"{reading.WholeSpo2Percent} %";

    private static string Start(ArchivedSession session) =>
        session.Header.Start?.ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture) ?? "start not known";

    private static void Table(StringBuilder html, string title, IReadOnlyList<string> columns, IEnumerable<string[]> rows)
    {
        Add(html, $"<h2>{title}</h2><table><tr>");
        foreach (var column in columns)
        {
            Add(html, $"<th>{column}</th>");
        }

        html.Append("</tr>");
        foreach (var row in rows)
        {
            html.Append("<tr>");
            foreach (var cell in row)
            {
                Add(html, $"<td>{cell}</td>");
            }

            html.Append("</tr>\n");
        }

        html.Append("</table>\n");
    }

    // Every value is encoded: what an archive holds is no page.
    private static void Add(StringBuilder html, FormattableString part)
    {
        var encoded = part.GetArguments().Select(value => value is string text ? WebUtility.HtmlEncode(text) : value).ToArray();
        html.Append(string.Format(CultureInfo.InvariantCulture, part.Format, encoded));
    }
}
