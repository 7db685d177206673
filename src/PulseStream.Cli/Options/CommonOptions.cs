using System.CommandLine;
using PulseStream.Readings;
using PulseStream.Readings.Curves;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Options;

/// <summary>Options that most commands share.</summary>
internal sealed class CommonOptions
{
    private const string Text = "text";
    private const string Ndjson = "ndjson";

    private readonly Option<string?> _format = new("--format") { HelpName = "text|ndjson", Description = "for people, or one JSON object a line; text unless told" };
    private readonly Option<string?> _archive = new("--archive") { HelpName = "DIR", Description = "archive of sessions; made where it does not exist" };
    private readonly Option<string?> _person = new("--person") { HelpName = "ID", Description = "pseudonym of the person: letters, digits, - and _" };
    private readonly Option<string?> _policy = new("--policy") { HelpName = "FILE", Description = "triage policy (JSON) instead of the default one" };
    private readonly Option<string?> _curve = new("--curve") { HelpName = "FILE", Description = "calibration curve (JSON) instead of SpO2 = 110 - 25 R" };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "no diagnostics on standard error, failures excepted" };

    public void AddTo(Command command)
    {
        foreach (var option in new Option[] { _format, _archive, _person, _policy, _curve, _quiet })
        {
            command.Add(option);
        }
    }

    public bool IsNdjson(ParseResult parsed) => OptionText.OneOf(_format.Name, parsed.GetValue(_format), Text, Ndjson) == Ndjson;

    public string? Archive(ParseResult parsed) => parsed.GetValue(_archive);

    public string? Person(ParseResult parsed) =>
        parsed.GetValue(_person) is { } person ? PulseStream.Archive.Pseudonym.Checked(_person.Name, person) : null;

    /// <summary>The policy of the option; null where it is not given.</summary>
    public TriagePolicy? Policy(ParseResult parsed) => parsed.GetValue(_policy) is { } path ? TriagePolicy.Parse(InputFile.Read(path), path) : null;

    /// <summary>The curve of the option; null where it is not given.</summary>
    public CalibrationCurve? Curve(ParseResult parsed) => parsed.GetValue(_curve) is { } path ? CurveFile.Parse(InputFile.Read(path), path) : null;

    public Action<string> Say(ParseResult parsed, TextWriter error) => parsed.GetValue(_quiet) ? static _ => { } : error.WriteLine;
}
