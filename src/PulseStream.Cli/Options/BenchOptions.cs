using System.CommandLine;
using PulseStream.Accuracy;
using PulseStream.Accuracy.Criteria;

namespace PulseStream.Cli.Options;

/// <summary>Options of the commands for bench engineers.</summary>
internal sealed class BenchOptions
{
    private readonly Option<string?> _format = new("--format") { HelpName = "text|ndjson", Description = "for people, or one JSON object a line; text unless told" };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "no diagnostics on standard error, failures excepted" };

    public static Option<string?> NewCriteria() => new("--criteria") { HelpName = "FILE", Description = "criteria (JSON) instead of ISO 80601-2-61:2017 and the FDA's guidance of 2013" };

    public static Option<string?> NewQuantity() => new("--quantity") { HelpName = "spo2|pulse", Description = "what was compared; spo2 unless told" };

    public static Option<string?> NewPage() => new("--page") { HelpName = "FILE", Description = "page to write (HTML), complete in itself, with figures" };

    public static Option<string?> NewFigures() => new("--figures") { HelpName = "DIR", Description = "folder for the figures, each as PNG and SVG" };

    public static IReadOnlyList<Criterion> CriteriaOf(ParseResult parsed, Option<string?> option) =>
        parsed.GetValue(option) is { } path ? CriteriaFile.Parse(InputFile.Read(path), path) : CriteriaFile.Default;

    public static Quantity QuantityOf(ParseResult parsed, Option<string?> option) =>
        OptionText.OneOf(option.Name, parsed.GetValue(option), "spo2", "pulse") == "pulse" ? Quantity.PulseRate : Quantity.Saturation;

    public void AddTo(Command command)
    {
        command.Add(_format);
        command.Add(_quiet);
    }

    public bool IsNdjson(ParseResult parsed) => OptionText.OneOf(_format.Name, parsed.GetValue(_format), "text", "ndjson") == "ndjson";

    public Action<string> Say(ParseResult parsed, TextWriter error) => parsed.GetValue(_quiet) ? static _ => { } : error.WriteLine;
}
