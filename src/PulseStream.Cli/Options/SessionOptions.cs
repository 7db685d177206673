using System.CommandLine;
using PulseStream.Archive;
using PulseStream.Cli.Commands;
using PulseStream.Cli.Output;

namespace PulseStream.Cli.Options;

/// <summary>Options of every command that runs sessions.</summary>
internal sealed class SessionOptions
{
    private readonly Option<bool> _beats = new("--beats") { Description = "tell each beat as well" };
    private readonly Option<string?> _sensor = new("--sensor") { HelpName = "ID", Description = "which sensor, kept in the archive" };
    private readonly Option<string?> _site = new("--site") { HelpName = "ID", Description = "where on the body, kept in the archive" };
    private readonly Option<bool> _afterExertion = new("--after-exertion") { Description = "a check after a minute of standing up and sitting down, kept apart in the archive: only from 96 % at rest, never alone, stop when unwell" };
    private readonly CommonOptions _common = new();
    private readonly PersonOptions _person = new();

    public void AddTo(Command command)
    {
        command.Add(_beats);
        command.Add(_sensor);
        command.Add(_site);
        command.Add(_afterExertion);
        _common.AddTo(command);
        _person.AddTo(command);
    }

    /// <summary>What was asked for.</summary>
    /// <exception cref="Samples.BadInputException">A word is wrong; none is left to be found later.</exception>
    public SessionOrder OrderOf(ParseResult parsed, TextWriter error)
    {
        var order = new SessionOrder(
            _common.Archive(parsed),
            _common.Person(parsed),
            Checked(_sensor, parsed),
            Checked(_site, parsed),
            _common.Curve(parsed),
            _common.Policy(parsed),
            curve => _person.Circumstances(parsed, curve),
            _person.Previous(parsed),
            _common.Say(parsed, error))
        {
            Activity = parsed.GetValue(_afterExertion) ? SessionIdentity.Exertion : null,
        };
        order.CircumstancesFor(order.Curve ?? Readings.CalibrationCurve.TextbookLine);
        if (order is { Archive: null, Person: not null })
        {
            order.Say("--person is of no use without --archive: nothing is kept, and no earlier reading is known.");
        }

        return order;
    }

    /// <summary>Whether nobody asked for lines: a screen may stand in for them.</summary>
    public bool IsForPeople(ParseResult parsed) => !_common.IsNdjson(parsed) && !parsed.GetValue(_beats);

    /// <summary>Shows results as asked for while some work is done.</summary>
    public int Print(ParseResult parsed, ResultStream results, Func<ResultPrinter, int> work)
    {
        using var line = new NdjsonLine(results);
        using var text = new StreamWriter(results, leaveOpen: true);
        return work(_common.IsNdjson(parsed) ? new NdjsonPrinter(line, parsed.GetValue(_beats)) : new TextPrinter(text, parsed.GetValue(_beats)));
    }

    private static string? Checked(Option<string?> option, ParseResult parsed) =>
        parsed.GetValue(option) is { } word ? Pseudonym.Checked(option.Name, word) : null;
}
