using System.CommandLine;

namespace PulseStream.Cli.Options;

/// <summary>The options of commands that judge no recording: how results are shown, and whether diagnostics are.</summary>
internal sealed class FormatOptions
{
    private const string Text = "text";
    private const string Ndjson = "ndjson";

    private readonly Option<string?> _format = new("--format") { HelpName = "text|ndjson", Description = "for people, or one JSON object a line; text unless told" };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "no diagnostics on standard error, failures excepted" };

    public void AddTo(Command command)
    {
        command.Add(_format);
        command.Add(_quiet);
    }

    public bool IsNdjson(ParseResult parsed) => OptionText.OneOf(_format.Name, parsed.GetValue(_format), Text, Ndjson) == Ndjson;

    public Action<string> Say(ParseResult parsed, TextWriter error) => parsed.GetValue(_quiet) ? static _ => { } : error.WriteLine;
}
