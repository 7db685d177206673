using System.CommandLine;
using PulseStream.Archive;
using PulseStream.Cli.Inputs;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Plots;
using PulseStream.Samples;

namespace PulseStream.Cli.Commands;

/// <summary>`report`: a picture or a page of one archived session.</summary>
internal static class ReportCommand
{
    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var session = new Argument<string>("SESSION") { Description = "folder of an archived session" };
        session.Validators.Add(PathArguments.RefuseUnknownOptions);
        var picture = new Option<string?>("--out") { HelpName = "FILE", Description = "picture (PNG) or page (.html, needs nothing else) to write; SESSION.png in this folder unless told" };
        var command = new Command("report", "Draws one archived session: pulse wave, SpO2 with its interval and readings, pulse, perfusion, condition.") { session, picture };
        command.SetAction((ParseResult parsed) =>
        {
            var folder = OnlySession(parsed.GetRequiredValue(session), surroundings.Error.WriteLine);
            var path = parsed.GetValue(picture) ?? ArchivedSession.Open(folder).Identity.Session + ".png";
            Write(path, folder);
            using var text = new StreamWriter(results, leaveOpen: true);
            text.WriteLine(path);
            return ExitStatus.Done;
        });
        return command;
    }

    private static string OnlySession(string path, Action<string> say)
    {
        var sessions = RecordingPaths.Expand(path, say);
        return sessions.Count == 1
            ? sessions[0]
            : throw new BadInputException(path, $"expected one session, found {sessions.Count}", "Name the folder of one of them");
    }

    private static void Write(string path, string session)
    {
        if (Path.GetExtension(path).Equals(".html", StringComparison.OrdinalIgnoreCase))
        {
            PageFile.Write(path, SessionPage.HtmlOf(ArchivedSession.Open(session)));
            return;
        }

        // In memory first: a session that cannot be drawn leaves no half picture.
        using var png = new MemoryStream();
        SessionPicture.Draw(session, png);
        PageFile.Write(path, png.ToArray());
    }
}
