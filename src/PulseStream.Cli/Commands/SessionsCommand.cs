using System.CommandLine;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Samples;

namespace PulseStream.Cli.Commands;

/// <summary>`sessions`: what an archive holds, one line a session.</summary>
internal sealed class SessionsCommand
{
    private readonly Option<string?> _archive = new("--archive") { HelpName = "DIR", Description = "archive of sessions", Required = true };
    private readonly Option<string?> _person = new("--person") { HelpName = "ID", Description = "sessions of this pseudonym alone" };
    private readonly FormatOptions _format = new();
    private readonly Surroundings _surroundings;
    private readonly ResultStream _results;

    private SessionsCommand(Surroundings surroundings, ResultStream results) => (_surroundings, _results) = (surroundings, results);

    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var sessions = new SessionsCommand(surroundings, results);
        var command = new Command("sessions", "Lists what an archive holds, in the order of person, date and session: when each began, how long it was, how much of it was usable.")
        {
            sessions._archive,
            sessions._person,
        };
        sessions._format.AddTo(command);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() => sessions.Run(parsed, cancel), CancellationToken.None));
        return command;
    }

    private int Run(ParseResult parsed, CancellationToken cancel)
    {
        var (isNdjson, archive) = (_format.IsNdjson(parsed), parsed.GetValue(_archive)!);
        var person = parsed.GetValue(_person) is { } told ? Pseudonym.Checked(_person.Name, told) : null;
        if (!Directory.Exists(archive))
        {
            throw new BadInputException(archive, "expected the folder of an archive, found none", "Check --archive and run again");
        }

        var folders = FoldersOf(archive, person, _format.Say(parsed, _surroundings.Error));
        using var line = new NdjsonLine(_results);
        using var text = new StreamWriter(_results, leaveOpen: true);
        var damaged = 0;
        foreach (var (session, problem) in ManyFolders.Read(folders, Opened, cancel))
        {
            if (session is null)
            {
                damaged++;
                _surroundings.Complain(problem!);
            }
            else if (isNdjson)
            {
                SessionLines.Print(line, session);
            }
            else
            {
                text.WriteLine(SessionLines.TextOf(session));
            }
        }

        text.Flush();
        _results.Flush();
        return damaged > 0 ? ExitStatus.NotAll : ExitStatus.Done;
    }

    private static IReadOnlyList<string> FoldersOf(string archive, string? person, Action<string> say)
    {
        if (person is null)
        {
            ArchiveRecovery.RecoverAll(archive, say);
            return SessionArchive.Sessions(archive);
        }

        ArchiveRecovery.RecoverPerson(archive, person, say);
        return SessionArchive.SessionsOf(archive, person);
    }

    private static (ArchivedSession? Session, string? Problem) Opened(string folder)
    {
        try
        {
            return (ArchivedSession.Open(folder), null);
        }
        catch (BadInputException problem)
        {
            return (null, problem.Message);
        }
    }
}
