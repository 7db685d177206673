using System.CommandLine;
using PulseStream.Simulation;

namespace PulseStream.Cli.Commands;

/// <summary>`simulate`: writes a made-up recording and the truth beside it.</summary>
internal static class SimulateCommand
{
    public static Command Of()
    {
        var path = new Argument<string>("OUT") { Description = "recording to write (CSV); OUT's .truth.csv and .beats.csv come beside it" };
        var command = new Command("simulate", "writes a recording whose truth is known, and the truth beside it") { path };
        var options = new ScenarioOptions();
        options.AddTo(command);
        command.SetAction((ParseResult parsed) => Write(parsed.GetValue(path)!, options.Read(parsed)));
        return command;
    }

    private static int Write(string path, Scenario scenario)
    {
        var recording = new SimulatedRecording(scenario);
        WriteFile(path, writer => RecordingText.Write(recording, writer));
        WriteFile(TruthText.SecondsPath(path), writer => TruthText.WriteSeconds(recording, writer));
        WriteFile(TruthText.BeatsPath(path), writer => TruthText.WriteBeats(recording, writer));
        return ExitStatus.Done;
    }

    private static void WriteFile(string path, Action<TextWriter> write)
    {
        using var writer = new StreamWriter(path) { NewLine = "\n" };
        write(writer);
    }
}
