using System.CommandLine;
using PulseStream.Cli.Output;
using PulseStream.Readings;
using PulseStream.Samples;
using PulseStream.Sessions;
using PulseStream.Sessions.Events;
using PulseStream.Sources.Csv;
using PulseStream.Triage;
using PulseStream.Triage.Policies;

namespace PulseStream.Cli.Commands;

/// <summary>`replay`: runs recordings through the pipeline.</summary>
internal static class ReplayCommand
{
    public static Command Of(Surroundings surroundings, ResultStream results)
    {
        var paths = new Argument<string[]>("PATH") { Arity = ArgumentArity.OneOrMore, Description = "recordings" };
        var beats = new Option<bool>("--beats");
        var format = new Option<string>("--format");
        var command = new Command("replay", "runs recordings through the pipeline") { paths, beats, format };
        command.SetAction((ParseResult parsed, CancellationToken cancel) => Task.Run(() =>
        {
            using var line = new NdjsonLine(results);
            var printer = new NdjsonPrinter(line, parsed.GetValue(beats));
            foreach (var path in parsed.GetValue(paths)!)
            {
                var options = new CsvOptions(Say: surroundings.Error.WriteLine);
                using var recording = path == "-"
                    ? CsvRecording.Open(surroundings.Input, "-", options, cancel)
                    : CsvRecording.Open(path, options, cancel);
                var judgement = new Judgement(CalibrationCurve.TextbookLine, new ReadingOptions(), TriagePolicy.AdultsAtHomeSeaLevel, new Circumstances(), []);
                BadInputException? refused = null;
                MeasurementSession.Events(recording, judgement, null, cancel).Subscribe(new Shower(printer, results, problem => refused = problem));
                results.Flush();
                if (refused is not null)
                {
                    throw refused;
                }
            }

            return ExitStatus.Done;
        }));
        return command;
    }

    private sealed class Shower(ResultPrinter printer, ResultStream results, Action<BadInputException> refuse) : IObserver<SessionEvent>
    {
        public void OnNext(SessionEvent value)
        {
            printer.Print(value);
            if (value is SecondJudged)
            {
                results.Flush();
            }
        }

        public void OnError(Exception error) => refuse((BadInputException)error);

        public void OnCompleted()
        {
        }
    }
}
