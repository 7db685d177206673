using System.CommandLine;
using PulseStream.Cli.Options;
using PulseStream.Cli.Output;
using PulseStream.Simulation;

namespace PulseStream.Cli.Commands;

/// <summary>`simulate`: writes a recording whose truth is known, and the truth beside it.</summary>
internal static class SimulateCommand
{
    public static Command Of(Surroundings surroundings)
    {
        var path = new Argument<string>("OUT") { Description = "recording to write (CSV); its .truth.csv and .beats.csv are written beside it" };
        path.Validators.Add(PathArguments.RefuseUnknownOptions);
        var quiet = new Option<bool>("--quiet") { Description = "no diagnostics on standard error, failures excepted" };
        var options = new ScenarioOptions();
        var command = new Command("simulate", "Writes a recording of an invented finger whose truth is known, and the truth beside it.") { path };
        options.AddTo(command);
        command.Add(quiet);
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(
            () =>
            {
                var recording = new SimulatedRecording(options.ScenarioOf(parsed));
                var written = SimulatedFiles.Write(parsed.GetRequiredValue(path), recording, cancel);
                if (!parsed.GetValue(quiet))
                {
                    surroundings.Error.WriteLine($"Written, invented: {string.Join(", ", written)}.");
                }

                return ExitStatus.Done;
            },
            CancellationToken.None));
        return command;
    }
}
