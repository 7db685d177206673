using System.Net;
using System.Text;

namespace PulseStream.Cli.Output.Bench;

/// <summary>A page that is complete in itself: style inline, figures as data.</summary>
internal static class BenchHtml
{
    private const string Style = """
        body { font: 15px/1.45 system-ui, sans-serif; color: #1a1a1a; max-width: 62rem; margin: 2rem auto; padding: 0 1rem; }
        h1 { font-size: 1.5rem; } h2 { font-size: 1.15rem; margin-top: 2rem; }
        table { border-collapse: collapse; margin: .6rem 0; }
        th, td { border: 1px solid #d5d5d5; padding: .25rem .6rem; text-align: right; vertical-align: top; }
        th { background: #f5f5f5; } td.text, th.text { text-align: left; }
        .no { font-weight: 700; } .soft { color: #5a5a5a; }
        figure { margin: 1.2rem 0; } img { max-width: 100%; height: auto; border: 1px solid #e3e3e3; }
        td.cell { min-width: 4.2rem; text-align: center; } td.beyond { outline: 3px solid #1a1a1a; outline-offset: -3px; }
        .maps { display: flex; flex-wrap: wrap; gap: 1.5rem; }
        @media print { body { max-width: none; margin: 0; } }
        """;

    /// <summary>The page around a body.</summary>
    public static string Page(string title, string body) =>
        $"<!DOCTYPE html>\n<html lang=\"en\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>{Text(title)}</title>\n<style>\n{Style}\n</style></head>\n<body><h1>{Text(title)}</h1>\n{body}\n<p class=\"soft\">PulseStream is no medical device and does not diagnose. Clinicians and the local emergency number come first.</p></body></html>\n";

    /// <summary>Text made fit for a page.</summary>
    public static string Text(string text) => WebUtility.HtmlEncode(text);

    /// <summary>A figure.</summary>
    public static string Figure(string title, byte[] png) =>
        $"<figure><img alt=\"{Text(title)}\" src=\"data:image/png;base64,{Convert.ToBase64String(png)}\"></figure>\n";

    /// <summary>A table; what begins with a letter stands at the left.</summary>
    public static string Table(IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows)
    {
        var html = new StringBuilder("<table><tr>");
        html.AppendJoin("", header.Select(name => $"<th{Class(name)}>{Text(name)}</th>")).Append("</tr>\n");
        foreach (var row in rows)
        {
            html.Append("<tr>").AppendJoin("", row.Select(cell => $"<td{Class(cell)}>{Text(cell)}</td>")).Append("</tr>\n");
        }

        return html.Append("</table>\n").ToString();
    }

    private static string Class(string cell) => cell.Length > 0 && char.IsLetter(cell[0]) ? " class=\"text\"" : "";
}
