using System.CommandLine;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Course;
using PulseStream.Samples;

namespace PulseStream.Cli.Commands;

/// <summary>`trend`: one person's accepted readings over days, from the archive.</summary>
internal sealed class TrendCommand
{
    private const string Description =
        """
        Tells the course of one person's resting SpO2 over days, from an archive. No medical device, no diagnosis.
          usual      the highest steady level of the last 30 days, so that a lasting fall does not become usual;
                     without the last reading, which is held against it
          drop       usual minus the last reading
          change     a lasting fall or rise, found by cumulative sums
          exertion   a check recorded with --after-exertion, and the one at rest up to 15 minutes before; a fall of
                     3 points is said. Such a check only from 96 % at rest, never alone; stop when unwell.
          recheck    a check that an advice asked for: when it was due, and when the next reading came
        """;

    private readonly Option<string?> _archive = new("--archive") { HelpName = "DIR", Description = "archive of sessions", Required = true };
    private readonly Option<string?> _person = new("--person") { HelpName = "ID", Description = "pseudonym of the person", Required = true };
    private readonly Option<string?> _altitude = new("--altitude") { HelpName = "METRES", Description = "height above sea level, to show what it alone does to SpO2" };
    private readonly Option<string?> _sheet = new("--sheet") { HelpName = "FILE", Description = "write one page to hand over as well (HTML, prints to one sheet of A4)" };
    private readonly FormatOptions _format = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private TrendCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var trend = new TrendCommand(surroundings, results);
        var command = new Command("trend", Description) { trend._archive, trend._person, trend._altitude, trend._sheet };
        trend._format.AddTo(command);
        command.SetAction((ParseResult parsed) => trend.Run(parsed));
        return command;
    }

    private int Run(ParseResult parsed)
    {
        var (isNdjson, say) = (_format.IsNdjson(parsed), _format.Say(parsed, _surroundings.Error));
        var person = Pseudonym.Checked(_person.Name, parsed.GetValue(_person)!);
        var altitude = OptionText.Number(_altitude.Name, parsed.GetValue(_altitude), 0, Altitude.HighestMetres);
        var archive = parsed.GetValue(_archive)!;
        if (!Directory.Exists(archive))
        {
            throw new BadInputException(archive, "expected the folder of an archive, found none", "Check --archive and run again");
        }

        ArchiveRecovery.RecoverPerson(archive, person, say);
        var days = PersonDays.Read(archive, person, _surroundings.Complain);
        var trend = new PersonTrend(person, days, PersonCourse.Of(days.Points(), new ChangeOptions()), altitude, _surroundings.Clock.GetUtcNow());
        if (parsed.GetValue(_sheet) is { } sheet)
        {
            PageFile.Write(sheet, HandoffSheet.HtmlOf(trend));
        }

        Print(trend, isNdjson);
        return days.Damaged > 0 ? ExitStatus.NotAll : ExitStatus.Done;
    }

    private void Print(PersonTrend trend, bool isNdjson)
    {
        if (isNdjson)
        {
            using var line = new NdjsonLine(_results);
            TrendLines.Print(line, trend);
        }
        else
        {
            using var text = new StreamWriter(_results, leaveOpen: true);
            TrendText.Print(text, trend);
        }

        _results.Flush();
    }
}
