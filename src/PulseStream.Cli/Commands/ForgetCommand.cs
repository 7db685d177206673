using System.CommandLine;
using PulseStream.Archive;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;

namespace PulseStream.Cli.Commands;

/// <summary>`forget`: removes everything that an archive holds of a person.</summary>
internal static class ForgetCommand
{
    public static Command Of(ResultStream results)
    {
        var person = new Argument<string>("PERSON") { Description = "pseudonym of the person" };
        person.Validators.Add(PathArguments.RefuseUnknownOptions);
        var archive = new Option<string?>("--archive") { HelpName = "DIR", Description = "archive of sessions", Required = true };
        var format = new FormatOptions();
        var command = new Command("forget", "Removes everything that an archive holds of a person, journals included, and says what that was. It cannot be undone; copies and files made from it elsewhere are yours to remove.") { person, archive };
        format.AddTo(command);
        command.SetAction((ParseResult parsed) =>
        {
            var (who, isNdjson) = (Pseudonym.Checked("PERSON", parsed.GetRequiredValue(person)), format.IsNdjson(parsed));
            Print(results, who, PersonRemoval.Remove(parsed.GetValue(archive)!, who), isNdjson);
            return ExitStatus.Done;
        });
        return command;
    }

    private static void Print(ResultStream results, string person, PersonRemoval removed, bool isNdjson)
    {
        if (isNdjson)
        {
            using var line = new NdjsonLine(results);
            line.Begin("forgotten")
                .Add("person", person)
                .Add("sessions", (long?)removed.Sessions)
                .Add("days", (long?)removed.Days)
                .Add("files", (long?)removed.Files)
                .Add("bytes", (long?)removed.Bytes)
                .End();
        }
        else
        {
            using var text = new StreamWriter(results, leaveOpen: true);
            text.WriteLine($"Removed of person {person}: {removed.Sessions} sessions on {removed.Days} days, {removed.Files} files, {removed.Bytes} bytes.");
        }

        results.Flush();
    }
}
